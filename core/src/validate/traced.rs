//! A traced load, from what was entered.

use super::Entries;
use super::load::box_and_feet;
use super::parts::outline_rule;
use crate::document::{GivenAs, Trace, TraceView};
use crate::found::{Drawn, Says, Shape, TraceFound, Way};
use crate::picture;
use crate::place::{Field, Place};
use crate::problem::Rule;
use crate::rules;
use crate::scalar::{Region, Scalar, Span};
use crate::solid::{Form, Solid};
use crate::traced::{Fault, Outlined, Reference, Tapped};
use glam::{DVec2, DVec3};

/// The farthest that a point may lie from the picture's corner, pixels.
const FARTHEST: f64 = 1e5;

fn points(list: &[[f64; 2]]) -> Vec<DVec2> {
    list.iter().map(|p| DVec2::from_array(*p)).collect()
}

impl Entries {
    pub(super) fn traced(&mut self) -> Option<Shape> {
        let Some(trace) = self.document.load.trace.clone() else {
            self.problem(Field::TraceOutline, None, Rule::Required);
            return None;
        };
        let through = self.needed_here(Field::TraceThrough);
        let mass = self.entered(Field::LoadMass);
        let material = self.document.load.material;
        if mass.is_none() && material.is_none() && self.document.load.weighing.is_none() {
            self.problem(Field::LoadMass, None, Rule::WeightOrMaterial);
        }
        let tapped = self.tapped(&trace)?;
        self.both_references(&trace, &tapped);
        let outlined = match tapped.find() {
            Ok(outlined) => outlined,
            Err(fault) => {
                self.trace_problem(&tapped, fault);
                return None;
            }
        };
        let straightened = matches!(tapped.reference, Reference::Rectangle { .. });
        let trace = TraceFound { outlined, straightened };
        self.outline = Some(trace.clone());
        let outlined = &trace.outlined;
        let through = through?;
        let prism = |outline: &[DVec2]| Form::Prism { outline: outline.to_vec(), length: through };
        // The outline begins where its box does; across it is counted from the middle.
        let solid = Solid::new(prism(&outlined.outline), tapped.facing(), DVec3::ZERO);
        let mut drawn = vec![Drawn { part: None, cut: false, seen: solid.silhouette() }];
        let holes: Vec<Solid> = outlined.holes.iter().map(|h| Solid::within(&solid, prism(h))).collect();
        drawn.extend(holes.iter().map(|h| Drawn { part: None, cut: true, seen: h.silhouette() }));
        let (low, size, feet) = box_and_feet(&[(&solid, holes.iter().collect())])?;
        let tape = rules::TOLERANCE_TAPE.value;
        let doubt = match tapped.view {
            TraceView::Side => DVec2::new(outlined.spread.x, tape),
            TraceView::Front => DVec2::new(tape, outlined.spread.x),
            TraceView::Plan => outlined.spread,
        };
        self.drawn.clone_from(&drawn);
        let even = mass.is_none() && material.is_some();
        let says = says(outlined, tapped.view, through, material.filter(|_| even).map(|m| m.density().span), size);
        Some(Shape {
            given_as: GivenAs::Trace,
            low,
            size,
            feet,
            doubt,
            says,
            drawn,
            parts: Vec::new(),
            trace: Some(trace),
        })
    }

    /// What was tapped, where it is enough.
    fn tapped(&mut self, trace: &Trace) -> Option<Tapped> {
        let lists = std::iter::once((Field::TraceOutline.into(), trace.outline.as_slice()))
            .chain(trace.holes.iter().enumerate().map(|(k, h)| (Place::in_row(Field::TraceHole, k), h.as_slice())))
            .chain([(Field::TraceScaleEnds.into(), trace.scale.as_slice())])
            .chain([(Field::TraceRectangle.into(), trace.rectangle.as_slice())]);
        let lists: Vec<(Place, Vec<DVec2>)> = lists.map(|(place, list)| (place, points(list))).collect();
        let before = self.problems.len();
        for (place, list) in &lists {
            if list.iter().any(|p| !p.is_finite() || p.abs().max_element() > FARTHEST) {
                self.problem(*place, None, Rule::NotFinite);
            }
        }
        let picture = trace.picture.map(DVec2::from_array);
        let longer_side = match picture {
            Some(size) if size.is_finite() && size.min_element() >= 1.0 && size.max_element() <= FARTHEST => {
                size.max_element()
            }
            _ => {
                self.problem(Field::TracePicture, None, Rule::Required);
                0.0
            }
        };
        let reference = self.reference(trace);
        if trace.outline.is_empty() {
            self.problem(Field::TraceOutline, None, Rule::Required);
        }
        if self.problems.len() > before {
            return None;
        }
        Some(Tapped {
            view: trace.view,
            truck: trace.truck,
            longer_side,
            outline: points(&trace.outline),
            holes: trace.holes.iter().map(|h| points(h)).collect(),
            reference: reference?,
        })
    }

    /// A known length beside a rectangle is held against it.
    fn both_references(&mut self, trace: &Trace, tapped: &Tapped) {
        let Reference::Rectangle { corners, width, height } = tapped.reference else { return };
        let (Ok(ends), Some(length)) = (<[DVec2; 2]>::try_from(points(&trace.scale)), self.entered(Field::TraceScale))
        else {
            return;
        };
        let Ok(picture) = picture::Picture::straightened(corners, width, height, tapped.longer_side) else { return };
        let found = picture.to_plane(ends[0]).distance(picture.to_plane(ends[1]));
        if (found - length).abs() > rules::TRACE_SCALE_AGREES.value * length {
            let rule = Rule::ScaleDisagrees { found: Scalar::computed(found.min(1e6)) };
            self.problem(Field::TraceScale, Some(length), rule);
        }
    }

    /// The rectangle where there is one, else the length.
    fn reference(&mut self, trace: &Trace) -> Option<Reference> {
        if !trace.rectangle.is_empty() {
            let width = self.needed_here(Field::TraceRectangleWidth);
            let height = self.needed_here(Field::TraceRectangleHeight);
            let Ok(corners) = <[DVec2; 4]>::try_from(points(&trace.rectangle)) else {
                self.problem(Field::TraceRectangle, None, Rule::Required);
                return None;
            };
            return Some(Reference::Rectangle { corners, width: width?, height: height? });
        }
        let length = self.needed_here(Field::TraceScale);
        let Ok(ends) = <[DVec2; 2]>::try_from(points(&trace.scale)) else {
            self.problem(Field::TraceScaleEnds, None, Rule::Required);
            return None;
        };
        Some(Reference::Length { ends, length: length? })
    }

    fn trace_problem(&mut self, tapped: &Tapped, fault: Fault) {
        let (place, rule) = match fault {
            Fault::Reference(picture::Fault::ScaleTooShort) => (Field::TraceScaleEnds.into(), Rule::ScaleTooShort),
            Fault::Reference(picture::Fault::RectangleBent) => (Field::TraceRectangle.into(), Rule::RectangleBent),
            Fault::Outline(fault) => (Field::TraceOutline.into(), outline_rule(fault)),
            Fault::Hole(k, fault) => (Place::in_row(Field::TraceHole, k), outline_rule(fault)),
            Fault::HoleOutside(k) => (Place::in_row(Field::TraceHole, k.min(tapped.holes.len())), Rule::HoleOutside),
        };
        self.problem(place, None, rule);
    }
}

/// What the outline says of weight and centre, given what it is made of.
fn says(outlined: &Outlined, view: TraceView, through: f64, density: Option<Span>, size: DVec3) -> Says {
    let tape = rules::TOLERANCE_TAPE.value;
    let mass = density.map(|d| {
        let a = outlined.area;
        Span {
            lo: d.lo * a.lo * (through - tape).max(0.0),
            nominal: d.nominal * a.nominal * through,
            hi: d.hi * a.hi * (through + tape),
        }
    });
    let DVec2 { x: a, y: b } = outlined.centroid;
    let DVec2 { x: da, y: db } = outlined.spread;
    // Of one material all through the middle is the middle; what is only weighed may be packed unevenly.
    let uneven = if density.is_some() { 0.0 } else { rules::TOLERANCE_CENTRE_MIDDLE.value };
    let across = |size: f64| rules::TOLERANCE_PART_PLACE.value + uneven * size;
    let (at, spread) = match view {
        TraceView::Side => {
            (DVec3::new(a, 0.0, b), DVec3::new(da + uneven * size.x, across(size.y), db + uneven * size.z))
        }
        TraceView::Front => {
            (DVec3::new(0.5 * through, a, b), DVec3::new(across(size.x), da + uneven * size.y, db + uneven * size.z))
        }
        TraceView::Plan => {
            (DVec3::new(a, b, 0.5 * through), DVec3::new(da + uneven * size.x, db + uneven * size.y, across(size.z)))
        }
    };
    Says::centre(Way::Trace, mass, Region::about(at, spread))
}
