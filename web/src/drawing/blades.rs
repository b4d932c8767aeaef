//! The load on the blades in both drawings: the region that carries it, its own line of action, and
//! what is in hand where that is least or where it topples.

use super::frame::Frame;
use super::margin::Fares;
use super::marks::{self, along, apart, middle, towards};
use super::projection::{Metres, Spot};
use super::scene;
use super::seat::{self, Edge};
use super::sheet::Sheet;
use super::tag::Tag;
use standfast_core::report::SeatReport;
use standfast_core::seat::Over;

/// How far above the blades the distance is drawn in the side view: a low load must not hide it.
const ABOVE: f64 = 9.0;
/// Radius of what the handle on the load's centre covers.
const COVERED: f64 = 17.0;
/// Depth of the hatching beyond an edge that the load topples over.
const DEPTH: f64 = 12.0;

/// The stretch that carries the load in the side view.
struct Stretch {
    heel: Spot,
    tip: Spot,
    /// Along the blades and square to them, on the sheet.
    ahead: Spot,
    up: Spot,
}

impl Stretch {
    /// Nothing where no blade carries the load.
    fn of(f: &Frame, seat: &SeatReport) -> Option<Self> {
        let (u, v) = scene::blades(&f.step.scene.side);
        let corners = || seat.region.iter().map(|p| f.projection.spot((p.x.get(), p.z.get())));
        let heel = corners().reduce(|a, b| if b.0 < a.0 { b } else { a })?;
        let tip = corners().reduce(|a, b| if b.0 > a.0 { b } else { a })?;
        Some(Self { heel, tip, ahead: (u.0, -u.1), up: (v.0, -v.1) })
    }

    /// The end that an edge is at and the way out of it; nothing for a side.
    fn end(&self, over: Over) -> Option<(Spot, Spot)> {
        match over {
            Over::Ahead => Some((self.tip, self.ahead)),
            Over::Heel => Some((self.heel, (-self.ahead.0, -self.ahead.1))),
            Over::Left | Over::Right => None,
        }
    }

    /// Where the line of action of an edge's event meets the blades, and the edge itself: as far apart
    /// as the report says.
    fn distance(&self, f: &Frame, edge: &Edge) -> Option<(Spot, Spot)> {
        let (end, out) = self.end(edge.over)?;
        Some((along(end, out, -edge.margin.nominal.get() * f.projection.scale), end))
    }
}

/// Draws it in the side view.
pub fn side(f: &Frame, sheet: &mut Sheet) {
    let Some(seat) = &f.step.seat else { return };
    if let Some(stretch) = Stretch::of(f, seat) {
        let Stretch { heel, tip, up, .. } = stretch;
        let ends = [heel, tip].map(|p| marks::line(along(p, up, -8.0), along(p, up, 5.0)));
        sheet.shape("d-bed-halo", marks::line(heel, tip));
        sheet.named("d-bed", marks::line(heel, tip) + &ends.concat(), "load-region-side");
        for edge in seat::shown(seat) {
            let (Some((lands, end)), Some((_, out))) = (stretch.distance(f, &edge), stretch.end(edge.over)) else {
                continue;
            };
            if edge.fares == Fares::Past {
                let (low, high) = (along(end, up, -14.0), along(end, up, 34.0));
                sheet.shape("d-hatch d-crossed", marks::hatching(high, low, out, DEPTH));
                sheet.named("d-line d-crossed", marks::line(low, high), "load-edge-side");
            }
            event_line(f, sheet, seat, lands);
            let (from, to) = (along(lands, up, ABOVE), along(end, up, ABOVE));
            sheet.shape("d-dim", marks::line(end, along(to, up, 4.0)));
            dimension(sheet, &edge, from, to);
        }
    }
    line_of_action(f, sheet, seat);
    let (centre, bob) = (f.at(f.load_centre()), f.at(seat.bob));
    let size = (0.55 * apart(centre, bob) / marks::BOB_HEIGHT).min(0.36);
    sheet.named(own(seat::fares(seat)).2, marks::bob(bob, towards(bob, centre), size), "load-bob-side");
}

/// Draws it in the plan.
pub fn plan(f: &Frame, sheet: &mut Sheet) {
    let Some(seat) = &f.step.seat else { return };
    let corners: Vec<Spot> = seat.region.iter().map(|p| f.at(*p)).collect();
    if !corners.is_empty() {
        sheet.shape("d-bed-halo", marks::closed(&corners));
        sheet.named("d-bed d-bed-plan", marks::closed(&corners), "load-region-plan");
    }
    for edge in seat::shown(seat) {
        let Some(Facing { ends: (a, b), outward, from, to }) = facing(f, seat, &edge) else { continue };
        if edge.fares == Fares::Past {
            sheet.shape("d-hatch d-crossed", marks::hatching(a, b, outward, DEPTH));
            sheet.named("d-line d-crossed", marks::line(a, b), "load-edge-plan");
        }
        event_line(f, sheet, seat, from);
        dimension(sheet, &edge, from, to);
    }
    line_of_action(f, sheet, seat);
    let (bob, (halo, line, _)) = (f.at(seat.bob), own(seat::fares(seat)));
    let arm = COVERED + 5.0;
    let cross = marks::line((bob.0 - arm, bob.1), (bob.0 + arm, bob.1))
        + &marks::line((bob.0, bob.1 - arm), (bob.0, bob.1 + arm));
    sheet.shape(halo, cross.clone());
    sheet.named(line, cross, "load-bob-plan");
}

/// The thin plumb line from the load's centre to the blades.
fn line_of_action(f: &Frame, sheet: &mut Sheet, seat: &SeatReport) {
    let (halo, line, _) = own(seat::fares(seat));
    let path = marks::line(f.at(f.load_centre()), f.at(seat.bob));
    sheet.shape(halo, path.clone());
    sheet.named(line, path, "load-line");
}

/// The line that a distance is counted from, where it is not the line of action of the load at rest:
/// while the truck brakes, or where leaning back is not counted in the load's favour.
fn event_line(f: &Frame, sheet: &mut Sheet, seat: &SeatReport, lands: Spot) {
    if apart(lands, f.at(seat.bob)) < 3.0 {
        return;
    }
    let path = marks::line(f.at(f.load_centre()), lands) + &marks::circle(lands, 3.0);
    sheet.named("d-own-event", path, "load-line-counted");
}

fn dimension(sheet: &mut Sheet, edge: &Edge, from: Spot, to: Spot) {
    let (thin, heads) = marks::dimension(from, to);
    let past = edge.fares == Fares::Past;
    sheet.shape(if past { "d-dim d-crossed" } else { "d-dim d-strong" }, thin);
    sheet.shape(if past { "d-heads d-crossed" } else { "d-heads" }, heads);
}

/// An edge of the region in the plan, on the sheet.
struct Facing {
    ends: (Spot, Spot),
    /// Unit vector.
    outward: Spot,
    /// Where the line of action of the edge's event meets the blades, and the edge square to it: as
    /// far apart as the report says.
    from: Spot,
    to: Spot,
}

/// The edge that faces a way and is nearest to where the line of action meets the blades. A load that
/// rests on a line or a point has its edges there.
fn facing(f: &Frame, seat: &SeatReport, edge: &Edge) -> Option<Facing> {
    let corners: Vec<Metres> = seat.region.iter().map(|p| (p.x.get(), p.y.get())).collect();
    let next = corners.iter().cycle().skip(1);
    let sides = corners.iter().zip(next).map(|(a, b)| ((b.1 - a.1, a.0 - b.0), (*a, *b)));
    let (straight, faces): (Metres, fn(Metres) -> bool) = match edge.over {
        Over::Ahead => ((1.0, 0.0), |(x, y)| x > y.abs()),
        Over::Heel => ((-1.0, 0.0), |(x, y)| -x > y.abs()),
        Over::Left => ((0.0, 1.0), |(x, y)| y >= x.abs()),
        Over::Right => ((0.0, -1.0), |(x, y)| -y >= x.abs()),
    };
    let bob = f.at(seat.bob);
    let length = |n: Metres| (n.0 * n.0 + n.1 * n.1).sqrt();
    let off = |(n, (a, _)): &(Metres, (Metres, Metres))| {
        let (a, out) = (f.projection.spot(*a), towards((0.0, 0.0), (n.0, -n.1)));
        (a.0 - bob.0) * out.0 + (a.1 - bob.1) * out.1
    };
    let nearest = sides.filter(|(n, _)| faces(*n) && length(*n) > 1e-6).min_by(|a, b| off(a).total_cmp(&off(b)));
    let found = nearest.or_else(|| {
        let ends = corners.iter().map(|p| (straight, (*p, *p)));
        ends.max_by(|a, b| off(a).total_cmp(&off(b)))
    })?;
    let (normal, (a, b)) = found;
    let outward = towards((0.0, 0.0), (normal.0, -normal.1));
    let to = along(bob, outward, off(&found));
    let from = along(to, outward, -edge.margin.nominal.get() * f.projection.scale);
    Some(Facing { ends: (f.projection.spot(a), f.projection.spot(b)), outward, from, to })
}

/// Where the line of action of an edge's event meets the blades in the plan, and the edge.
#[cfg(test)]
pub fn distance(f: &Frame, seat: &SeatReport, edge: &Edge) -> Option<(Spot, Spot)> {
    facing(f, seat, edge).map(|side| (side.from, side.to))
}

/// The edge that the side view tells of: the one ahead where it is the tightest, another where the
/// load topples over it.
pub fn side_tag(f: &Frame) -> Option<(Tag, Spot)> {
    let seat = f.step.seat.as_ref()?;
    let Some(edge) = seat::tightest(seat) else { return Some((off(f), f.at(seat.bob))) };
    let distance = Stretch::of(f, seat).and_then(|s| Some((s.distance(f, &edge)?, s.up)));
    if distance.is_none() && edge.fares == Fares::Clear {
        return None;
    }
    let (stated, (worst, differs)) = (edge.stated(f.system, f.labels), edge.worst(f.system, f.labels));
    let mut under = vec![stated.1.to_owned(), f.labels.worst.to_owned(), worst.0];
    if differs {
        under.push(worst.1.to_owned());
    }
    let caption = format!("{} {}", f.labels.load, edge.name(f.labels));
    let test = "load-margin-side".to_owned();
    let tag = Tag { caption, main: stated.0, under, fares: edge.fares, first: false, test };
    let target = distance.map_or(f.at(seat.bob), |((from, to), up)| along(middle(from, to), up, ABOVE));
    Some((tag, target))
}

/// That it slides, for the side view; nothing where friction holds it.
pub fn slide_tag(f: &Frame) -> Option<Tag> {
    let (fares, case) = seat::slides(f.step.seat.as_ref()?)?;
    let (asked, there) = if fares == Fares::Past {
        seat::friction_words(case.asked.nominal, case.friction, f.labels)
    } else {
        seat::friction_words(case.asked.worst, case.friction_worst, f.labels)
    };
    Some(Tag {
        caption: format!("{} {}", f.labels.load, seat::event_name(case.event, f.labels)),
        main: if fares == Fares::Past { f.labels.slides } else { f.labels.may_slide }.to_owned(),
        under: vec![asked, there],
        fares,
        first: false,
        test: "load-slides".to_owned(),
    })
}

/// The tightest edge in the plan, with what it points at.
pub fn plan_tag(f: &Frame, caption: String) -> Option<(Tag, Spot)> {
    let seat = f.step.seat.as_ref()?;
    let Some(edge) = seat::tightest(seat) else { return Some((Tag { caption, ..off(f) }, f.at(seat.bob))) };
    let name = edge.name(f.labels);
    let (worst, differs) = edge.worst(f.system, f.labels);
    let under = if differs {
        vec![format!("{name}, {}", f.labels.worst), format!("{} {}", worst.0, worst.1)]
    } else {
        vec![format!("{name}, {} {}", f.labels.worst, worst.0)]
    };
    let test = "load-margin-plan".to_owned();
    let tag = Tag { caption, main: edge.words(f.system, f.labels), under, fares: edge.fares, first: false, test };
    let to = facing(f, seat, &edge)?.to;
    // On what shows of the distance beside the handle on the load's centre.
    let centre = f.at(f.load_centre());
    let target =
        if apart(centre, to) > COVERED + 8.0 { middle(along(centre, towards(centre, to), COVERED), to) } else { to };
    Some((tag, target))
}

/// Nothing carries it.
fn off(f: &Frame) -> Tag {
    let (caption, main) = (f.labels.load.to_owned(), f.labels.off_forks.to_owned());
    Tag { caption, main, under: Vec::new(), fares: Fares::Past, first: false, test: "load-off".to_owned() }
}

/// The classes of the load's own line: its ground, its line, its bob.
const fn own(fares: Fares) -> (&'static str, &'static str, &'static str) {
    match fares {
        Fares::Past | Fares::Short => ("d-own-halo", "d-own d-no", "d-own-bob d-no"),
        Fares::Doubtful => ("d-own-halo d-hold", "d-own d-hold", "d-own-bob d-hold"),
        Fares::Clear => ("d-own-halo", "d-own d-go", "d-own-bob d-go"),
    }
}
