//! A small picture of the load from above as it is turned on the forks: which side faces them, and
//! where its centre is.

use crate::form::Form;
use crate::words::words;
use standfast_core::document::Turned;
use standfast_core::place::Field;
use yew::prelude::*;

/// Width and height of the picture.
const WIDE: f64 = 280.0;
const HIGH: f64 = 220.0;
/// Kept free round the load; below it the forks come in.
const EDGE: f64 = 14.0;
const BELOW: f64 = 44.0;

/// From metres (ahead, left), the load turned, to the picture: ahead is up, left is left.
struct Sketch {
    turned: Turned,
    /// The middle of the load's box.
    middle: (f64, f64),
    /// Half its depth as it is turned.
    half: f64,
    scale: f64,
}

impl Sketch {
    /// A point of the load's own, turned about its middle; m.
    fn turn(&self, (ahead, left): (f64, f64)) -> (f64, f64) {
        let (a, l) = (ahead - self.middle.0, left - self.middle.1);
        match self.turned {
            Turned::No => (a, l),
            Turned::Left => (-l, a),
            Turned::Half => (-a, -l),
            Turned::Right => (l, -a),
        }
    }

    /// A place on the forks (ahead of the load's near side, left of its middle) in the picture.
    fn at(&self, (ahead, left): (f64, f64)) -> (f64, f64) {
        let base = HIGH - BELOW;
        (0.5 * WIDE - left * self.scale, base - ahead * self.scale)
    }

    fn own(&self, point: (f64, f64)) -> (f64, f64) {
        let (a, l) = self.turn(point);
        self.at((a + self.half, l))
    }
}

fn points(list: impl IntoIterator<Item = (f64, f64)>) -> String {
    let texts: Vec<_> = list.into_iter().map(|(x, y)| format!("{x:.1},{y:.1}")).collect();
    texts.join(" ")
}

pub(super) fn picture(form: &Form) -> Html {
    let w = &words().load;
    let (answer, turned) = (&form.answer, form.entries.turned);
    let Some(load) = &answer.load.load else { return Html::default() };
    let (low, size) = (&load.low, &load.size);
    let (x0, y0, depth, width) = (low.x.get(), low.y.get(), size.x.get(), size.y.get());
    let across = matches!(turned, Turned::Left | Turned::Right);
    let (deep, wide) = if across { (width, depth) } else { (depth, width) };
    let value = |field: Field| answer.value(field.into());
    let spread = value(Field::ForkSpread);
    let offset = value(Field::Offset).unwrap_or_default();
    // Forks wider than the load are shown whole too.
    let room = spread.map_or(wide, |s| wide.max(s + 2.0 * offset.abs()));
    let scale = ((WIDE - 2.0 * EDGE) / room).min((HIGH - BELOW - EDGE) / deep);
    let sketch = Sketch { turned, middle: (x0 + 0.5 * depth, y0 + 0.5 * width), half: 0.5 * deep, scale };
    let corners = [(x0, y0), (x0 + depth, y0), (x0 + depth, y0 + width), (x0, y0 + width)];
    let outline = |shape: &standfast_core::report::ShapeReport| {
        let list = shape.plan.iter().map(|(a, l)| sketch.own((a.get(), l.get())));
        html! { <polygon class={if shape.cut { "cut" } else { "solid" }} points={points(list)} /> }
    };
    let centre = &load.centre;
    let (cx, cy) = sketch.own((centre.ahead.nominal.get(), centre.left.nominal.get()));
    let ends = [
        sketch.own((centre.ahead.lo.get(), centre.left.lo.get())),
        sketch.own((centre.ahead.hi.get(), centre.left.hi.get())),
    ];
    let (left, top) = (ends[0].0.min(ends[1].0), ends[0].1.min(ends[1].1));
    let (right, bottom) = (ends[0].0.max(ends[1].0), ends[0].1.max(ends[1].1));
    html! {
        <figure class="turned">
            <svg viewBox={format!("0 0 {WIDE} {HIGH}")} role="img" aria-label={w.picture} data-testid="turned-picture">
                <title>{ w.picture }</title>
                if let Some(spread) = spread {
                    { forks(form, &sketch, spread, offset) }
                }
                { for answer.load.shapes.iter().filter(|s| !s.cut).map(outline) }
                { for answer.load.shapes.iter().filter(|s| s.cut).map(outline) }
                <polygon class="box" points={points(corners.map(|c| sketch.own(c)))} />
                <polyline class="heel" points={points([corners[0], corners[3]].map(|c| sketch.own(c)))} />
                <rect
                    class="may"
                    x={format!("{left:.1}")}
                    y={format!("{top:.1}")}
                    width={format!("{:.1}", right - left)}
                    height={format!("{:.1}", bottom - top)}
                />
                <g class="centre" transform={format!("translate({cx:.1} {cy:.1})")}>
                    <circle r="7" />
                    <path d="M0 0V-7A7 7 0 0 1 7 0ZM0 0V7A7 7 0 0 1 -7 0Z" />
                </g>
                <text class="from" x={format!("{:.1}", 0.5 * WIDE)} y={format!("{:.1}", HIGH - 6.0)}>{ w.forks_here }</text>
            </svg>
            <figcaption>{ w.picture }</figcaption>
        </figure>
    }
}

/// The blades under the load, as they are set.
fn forks(form: &Form, sketch: &Sketch, spread: f64, offset: f64) -> Html {
    let value = |field: Field| form.answer.value(field.into());
    let blade = value(Field::BladeWidth).unwrap_or(0.2 * spread).min(0.5 * spread);
    let reach = value(Field::Extension).or(value(Field::ForkLength));
    let gap = value(Field::HeelGap).unwrap_or_default();
    // Where the blades end is said only where it is known.
    let tip = reach.map_or(2.0 * sketch.half, |r| r - gap);
    let heel = (BELOW - 22.0) / sketch.scale;
    let bar = |from: f64| {
        let (a, b) = (sketch.at((tip, from + blade - offset)), sketch.at((-heel, from - offset)));
        html! {
            <rect
                class="blade"
                x={format!("{:.1}", a.0)}
                y={format!("{:.1}", a.1.max(1.0))}
                width={format!("{:.1}", b.0 - a.0)}
                height={format!("{:.1}", b.1 - a.1.max(1.0))}
            />
        }
    };
    html! { <>{ bar(0.5 * spread - blade) }{ bar(-0.5 * spread) }</> }
}
