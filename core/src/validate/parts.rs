//! A load built from parts, from what was entered.

use super::Entries;
use super::load::{box_and_feet, stated};
use crate::composite::{self, Piece};
use crate::document::{Facing, GivenAs, Part, Shape as Kind};
use crate::found::{Drawn, PartFound, Says, Shape, Way};
use crate::place::{Field, Place};
use crate::polygon;
use crate::problem::Rule;
use crate::rules;
use crate::scalar::{Region, Scalar, Span};
use crate::solid::{Form, Solid};
use glam::{DVec2, DVec3};

/// The farthest that a drawn outline's points may lie from where they are counted, m.
const FARTHEST: f64 = 20.0;

/// The problem with an outline, in the document's words.
pub(super) fn outline_rule(fault: polygon::Fault) -> Rule {
    match fault {
        polygon::Fault::TooShort { points } => Rule::OutlineTooShort { points },
        polygon::Fault::Crosses { first, second } => Rule::OutlineCrosses { first, second },
        polygon::Fault::Flat => Rule::OutlineFlat,
    }
}

impl Entries {
    pub(super) fn parts(&mut self) -> Option<Shape> {
        let parts = self.document.load.parts.clone();
        let solids: Vec<Option<Solid>> = parts.iter().enumerate().map(|(k, part)| self.solid(k, part)).collect();
        let draw = |(k, solid): (usize, &Option<Solid>)| {
            solid.as_ref().map(|s| Drawn { part: Some(k), cut: parts[k].cut_from.is_some(), seen: s.silhouette() })
        };
        let drawn: Vec<Drawn> = solids.iter().enumerate().filter_map(draw).collect();
        self.drawn.clone_from(&drawn);
        if parts.iter().all(|p| p.cut_from.is_some()) {
            self.problem(Field::Parts, None, Rule::Required);
        }
        let before = self.problems.len();
        let found: Vec<Option<(Piece, f64)>> = (0..parts.len()).map(|k| self.piece(k, &parts, &solids)).collect();
        if self.problems.len() > before || solids.iter().any(Option::is_none) {
            return None;
        }
        let whole = |k: &usize| parts[*k].cut_from.is_none();
        let pieces: Vec<Piece> = (0..parts.len()).filter(whole).filter_map(|k| found[k].map(|f| f.0)).collect();
        if pieces.len() < (0..parts.len()).filter(whole).count() {
            return None;
        }
        let (mass, centre) = composite::common(&pieces)?;
        let cuts_of = |host: usize| {
            (0..parts.len()).filter(|&c| parts[c].cut_from == Some(host)).filter_map(|c| solids[c].as_ref()).collect()
        };
        let standing: Vec<(&Solid, Vec<&Solid>)> =
            (0..parts.len()).filter(whole).filter_map(|k| Some((solids[k].as_ref()?, cuts_of(k)))).collect();
        let (low, size, feet) = box_and_feet(&standing)?;
        let doubt = DVec2::splat(rules::TOLERANCE_PART_PLACE.value);
        let says = Says::centre(Way::Parts, Some(mass), centre);
        let parts = (0..parts.len()).filter_map(|k| part_found(k, &parts, &solids, &found)).collect();
        Some(Shape { given_as: GivenAs::Parts, low, size, feet, doubt, says, drawn, parts, trace: None })
    }

    /// One part's solid in its place.
    fn solid(&mut self, k: usize, part: &Part) -> Option<Solid> {
        let at = |field| Place::in_row(field, k);
        let place = [Field::PartAhead, Field::PartLeft, Field::PartAbove].map(|f| self.needed_here(at(f)));
        let Some(kind) = part.shape else {
            self.problem(at(Field::PartShape), None, Rule::Required);
            return None;
        };
        let mut sizes = |fields: &[Field]| fields.iter().map(|f| self.needed_here(at(*f))).collect::<Option<Vec<_>>>();
        let (length, width, height) = (Field::PartLength, Field::PartWidth, Field::PartHeight);
        let diameter = Field::PartDiameter;
        let mut facing = part.facing;
        let form = match kind {
            Kind::Box => {
                facing = Facing::Up;
                Form::block(DVec3::from_slice(&sizes(&[length, width, height])?))
            }
            Kind::Wedge => {
                let size = DVec3::from_slice(&sizes(&[length, width, height])?);
                match Form::wedge(size, part.facing) {
                    Some((form, axis)) => {
                        facing = axis;
                        form
                    }
                    None => {
                        self.problem(at(Field::PartFacing), None, Rule::NotThisWay);
                        return None;
                    }
                }
            }
            Kind::Cylinder => {
                let s = sizes(&[diameter, length])?;
                Form::Cylinder { diameter: s[0], bore: 0.0, length: s[1] }
            }
            Kind::Tube => {
                let s = sizes(&[diameter, length, Field::PartBore])?;
                if s[2] >= s[0] {
                    let rule = Rule::NotMoreThan { limit: Scalar::computed(s[0]), of: at(diameter) };
                    self.problem(at(Field::PartBore), Some(s[2]), rule);
                    return None;
                }
                Form::Cylinder { diameter: s[0], bore: s[2], length: s[1] }
            }
            Kind::Cone => {
                let s = sizes(&[diameter, length])?;
                Form::Cone { diameter: s[0], length: s[1] }
            }
            Kind::Sphere => Form::Sphere { diameter: sizes(&[diameter])?[0] },
            Kind::HalfSphere => Form::HalfSphere { diameter: sizes(&[diameter])?[0] },
            Kind::Prism => {
                let length = sizes(&[length]);
                let outline = self.outline(at(Field::PartOutline), &part.outline)?;
                Form::Prism { outline, length: length?[0] }
            }
        };
        let [Some(x), Some(y), Some(z)] = place else { return None };
        Some(Solid::new(form, facing, DVec3::new(x, y, z)))
    }

    /// A drawn outline that is one.
    fn outline(&mut self, place: Place, points: &[[f64; 2]]) -> Option<Vec<DVec2>> {
        let points: Vec<DVec2> = points.iter().map(|p| DVec2::from_array(*p)).collect();
        if points.iter().any(|p| !p.is_finite()) {
            self.problem(place, None, Rule::NotFinite);
            return None;
        }
        if let Some(far) = points.iter().map(|p| p.abs().max_element()).find(|far| *far > FARTHEST) {
            let (min, max) = (Scalar::computed(-FARTHEST), Scalar::computed(FARTHEST));
            self.problem(place, Some(far), Rule::WholeWithin { min, max });
            return None;
        }
        if let Some(fault) = polygon::fault(&points) {
            self.problem(place, None, outline_rule(fault));
            return None;
        }
        Some(polygon::tidied(&points))
    }

    /// What one part weighs and where its centre is, its cut-outs taken away; its volume likewise.
    /// Nothing for a cut-out, which is looked at from its host.
    fn piece(&mut self, k: usize, parts: &[Part], solids: &[Option<Solid>]) -> Option<(Piece, f64)> {
        if let Some(host) = parts[k].cut_from {
            self.cut_out(k, host, parts, solids);
            return None;
        }
        let mass = self.entered(Place::in_row(Field::PartMass, k));
        if mass.is_none() && parts[k].material.is_none() {
            self.problem(Place::in_row(Field::PartMass, k), None, Rule::WeightOrMaterial);
        }
        let host = solids[k].as_ref()?;
        let cuts: Vec<&Solid> = (0..parts.len())
            .filter(|&c| parts[c].cut_from == Some(k))
            .map(|c| solids[c].as_ref())
            .collect::<Option<_>>()?;
        let volume = host.volume() - cuts.iter().map(|c| c.volume()).sum::<f64>();
        if volume <= 1e-6 * host.volume() {
            self.problem(Place::in_row(Field::PartShape, k), None, Rule::CutTakesAll);
            return None;
        }
        let moment = cuts.iter().fold(host.centroid() * host.volume(), |m, c| m - c.centroid() * c.volume());
        let centre = moment / volume;
        let (lo, hi) = host.extents();
        // Out of its place by as much, a cut-out draws the centre the other way by its share.
        let removed = cuts.iter().map(|c| c.volume()).sum::<f64>() / volume;
        let place = DVec3::splat(rules::TOLERANCE_PART_PLACE.value * (1.0 + removed));
        let (mass, spread) = match (mass, parts[k].material) {
            // What is weighed may be packed unevenly.
            (Some(mass), _) => {
                let usual = stated(mass, parts[k].weight_known).half_width();
                let tolerance = self.tolerance(Place::in_row(Field::PartMass, k), mass, usual);
                let mass = Span { lo: (mass - tolerance).max(0.0), ..Span::about(mass, tolerance) };
                (mass, place + (hi - lo) * rules::TOLERANCE_CENTRE_MIDDLE.value)
            }
            (None, Some(material)) => {
                let d = material.density().span;
                // Every size out by a tape's tolerance, and what is cut out by as much the other way.
                let off = rules::TOLERANCE_TAPE.value;
                let ((least, most), cut) = (host.volumes(off), cuts.iter().map(|c| c.volumes(off)));
                let (cut_least, cut_most) = cut.fold((0.0, 0.0), |(a, b), (c, d)| (a + c, b + d));
                let (least, most) = ((least - cut_most).max(0.0), most - cut_least);
                (Span { lo: d.lo * least, nominal: d.nominal * volume, hi: d.hi * most }, place)
            }
            (None, None) => return None,
        };
        Some((Piece { mass, centre: Region::about(centre, spread) }, volume))
    }

    /// A cut-out has a host that is there, is no cut-out itself, and holds it.
    fn cut_out(&mut self, k: usize, host: usize, parts: &[Part], solids: &[Option<Solid>]) {
        match parts.get(host) {
            Some(part) if host != k && part.cut_from.is_none() => {
                if let (Some(whole), Some(cut)) = (&solids[host], &solids[k])
                    && !whole.holds(cut)
                {
                    self.problem(Place::in_row(Field::PartCutFrom, k), None, Rule::CutOutside { part: host });
                }
                let same = |c: &usize| parts[*c].cut_from == Some(host);
                let over = |c: &usize| solids[k].as_ref().zip(solids[*c].as_ref()).is_some_and(|(a, b)| a.overlaps(b));
                if let Some(part) = (0..k).filter(same).find(over) {
                    self.problem(Place::in_row(Field::PartCutFrom, k), None, Rule::CutsOverlap { part });
                }
            }
            _ => self.problem(Place::in_row(Field::PartCutFrom, k), None, Rule::CutHost),
        }
    }
}

/// One part for the report: a cut-out takes away what its host is made of.
fn part_found(k: usize, parts: &[Part], solids: &[Option<Solid>], found: &[Option<(Piece, f64)>]) -> Option<PartFound> {
    let solid = solids[k].as_ref()?;
    match (parts[k].cut_from, found[k]) {
        (None, Some((piece, volume))) => Some(PartFound { mass: piece.mass, centre: piece.centre.at, volume }),
        (Some(host), _) => {
            let (piece, volume) = found.get(host).copied().flatten()?;
            let part = solid.volume() / volume;
            let Span { lo, nominal, hi } = piece.mass;
            let mass = Span { lo: -hi * part, nominal: -nominal * part, hi: -lo * part };
            Some(PartFound { mass, centre: solid.centroid(), volume: -solid.volume() })
        }
        (None, None) => None,
    }
}
