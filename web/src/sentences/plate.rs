//! What the plate does not cover, in sentences.

use super::Teller;
use crate::figures;
use crate::words::{Twice, fill};
use standfast_core::document::PlateFor;
use standfast_core::plate::Gap;
use standfast_core::scalar::Scalar;
use standfast_core::units::Rounding;
use standfast_core::verdict::State;

impl Teller<'_> {
    /// What the plate does not cover.
    pub(super) fn gap(&self, gap: &Gap, state: State) -> String {
        let (w, p, print) = (&self.w.verdict, &self.w.plate, self.print);
        let pick = |twice: Twice| if state == State::Hold { twice.may } else { twice.stated };
        let over = |a: &Scalar, b: &Scalar| a.get() - b.get();
        match gap {
            Gap::NoPlate => w.no_plate.to_owned(),
            Gap::OtherFrontEnd { issued_for: PlateFor::Forks, name, mass } => {
                fill(p.bare_forks, &[("what", &self.attachment(name, *mass))])
            }
            Gap::OtherFrontEnd { issued_for: PlateFor::Attachment, name, mass }
                if name.is_empty() && mass.is_none() =>
            {
                p.with_some_attachment.to_owned()
            }
            Gap::OtherFrontEnd { issued_for: PlateFor::Attachment, name, mass } => {
                fill(p.with_attachment, &[("what", &self.attachment(name, *mass))])
            }
            Gap::OtherAttachment { named, named_mass, fitted, fitted_mass } => fill(
                pick(p.other_attachment),
                &[
                    ("named", &self.attachment(named, *named_mass)),
                    ("fitted", &self.attachment(fitted, Some(*fitted_mass))),
                ],
            ),
            Gap::OtherMast { named, fitted } => {
                fill(p.other_mast, &[("named", &print.height(named.get())), ("fitted", &print.height(fitted.get()))])
            }
            Gap::OtherTyres { named, fitted: None } => fill(p.tyres_unknown, &[("named", (p.tyres)(*named))]),
            Gap::OtherTyres { named, fitted: Some(fitted) } => {
                fill(p.other_tyres, &[("named", (p.tyres)(*named)), ("fitted", (p.tyres)(*fitted))])
            }
            Gap::OtherTilt { way, named, fitted } => fill(
                (p.other_tilt)(*way),
                &[
                    ("named", &figures::angle(named.get(), Rounding::Down)),
                    ("fitted", &figures::angle(fitted.get(), Rounding::Up)),
                ],
            ),
            Gap::Extensions { mass } => {
                fill(w.extensions_not_named, &[("mass", &print.mass(mass.get(), Rounding::Nearest))])
            }
            Gap::TooHigh { height, last } => fill(
                w.too_high,
                &[
                    ("height", &print.height(height.get())),
                    ("last", &print.height(last.get())),
                    ("margin", &print.length(over(height, last), Rounding::Up)),
                ],
            ),
            Gap::TooFarOut { load_centre, last } => fill(
                pick(w.too_far_out),
                &[
                    ("centre", &print.length(load_centre.get(), Rounding::Up)),
                    ("last", &print.length(last.get(), Rounding::Down)),
                    ("margin", &print.length(over(load_centre, last), Rounding::Up)),
                ],
            ),
            Gap::TooHeavy { mass, allowed, row } => {
                let hanging = self.answer.hanging();
                let row = self.answer.document.truck.plate.as_ref().and_then(|p| p.rows.get(*row));
                let (centre, height) =
                    row.map_or((0.0, 0.0), |r| (r.load_centre_m.unwrap_or_default(), r.height_m.unwrap_or_default()));
                let said = fill(
                    pick(w.too_heavy),
                    &[
                        ("mass", &print.mass(mass.get(), Rounding::Up)),
                        ("allowed", &print.mass(allowed.get(), Rounding::Down)),
                        ("centre", &print.length(centre, Rounding::Nearest)),
                        ("height", &print.height(height)),
                        ("margin", &print.mass(over(mass, allowed), Rounding::Up)),
                    ],
                );
                match hanging {
                    Some(part) => {
                        let part = figures::slope(part.get(), Rounding::Down);
                        format!("{said} {}", fill(self.w.blades.too_heavy_hanging, &[("part", &part)]))
                    }
                    None => said,
                }
            }
            Gap::Battery { fitted, min, max } => {
                let mass = |kg: &Scalar, way| print.mass(kg.get(), way);
                let window = match (min, max) {
                    (Some(min), Some(max)) => {
                        fill(w.between, &[("a", &mass(min, Rounding::Up)), ("b", &mass(max, Rounding::Down))])
                    }
                    (Some(min), None) => fill(w.at_least, &[("a", &mass(min, Rounding::Up))]),
                    (None, max) => {
                        let max = max.map(|m| mass(&m, Rounding::Down)).unwrap_or_default();
                        fill(w.at_most, &[("a", &max)])
                    }
                };
                fill(w.battery, &[("fitted", &mass(fitted, Rounding::Nearest)), ("window", &window)])
            }
            Gap::BatteryUnknown => w.battery_unknown.to_owned(),
            Gap::OffCentre { offset, limit } => fill(
                pick(w.off_centre),
                &[
                    ("offset", &print.length(offset.get(), Rounding::Up)),
                    ("limit", &print.length(limit.get(), Rounding::Down)),
                    ("margin", &print.length(over(offset, limit), Rounding::Up)),
                ],
            ),
        }
    }

    /// An attachment by what is known of it.
    fn attachment(&self, name: &str, mass: Option<Scalar>) -> String {
        let p = &self.w.plate;
        let mass = mass.map(|kg| self.print.mass(kg.get(), Rounding::Nearest));
        match (name, mass) {
            ("", None) => p.some.to_owned(),
            ("", Some(mass)) => fill(p.weighing, &[("mass", &mass)]),
            (name, None) => name.to_owned(),
            (name, Some(mass)) => fill(p.named, &[("name", name), ("mass", &mass)]),
        }
    }
}
