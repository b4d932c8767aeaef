//! The truck and its plate, from what was entered.

use super::Entries;
use crate::document::Wheels;
use crate::place::{Field, Place};
use crate::problem::Rule;
use crate::rules;
use crate::scalar::{Scalar, Span};
use crate::scenario::{Attachment, Axle, Basis, Battery, Forks, Mast, Plate, Truck};
use glam::DVec3;

impl Entries {
    pub(super) fn truck(&mut self) -> Truck {
        let wheels = self.document.truck.wheels;
        if wheels.is_none() {
            self.problem(Field::Wheels, None, Rule::Required);
        }
        let wheels = wheels.unwrap_or(Wheels::Three);
        let wheelbase = self.needed(Field::Wheelbase);
        let service = self.needed(Field::Service);
        let cg_x = self.balance(wheelbase, service);
        self.together(Field::Rated, Field::RatedCentre);
        self.together(Field::FrontAxleLaden, Field::SteerAxleLaden);
        let plate = self.plate();
        let truck = Truck {
            wheels,
            wheelbase,
            tread: self.needed(Field::Tread),
            load_distance: self.needed(Field::LoadDistance),
            service,
            cg_x,
            cg_z: self.entered(Field::CgHeight),
            tyres: self.document.truck.tyres,
            top_speed_kmh: self.needed(Field::TopSpeed),
            operator: self.or_figure(Field::Operator, rules::OPERATOR_MASS),
            battery: self.battery(wheelbase, plate.as_ref()),
            axle: (wheels == Wheels::Four).then(|| self.axle()),
            mast: self.mast(wheels),
            forks: self.forks(wheels),
            attachment: self.attachment(),
            plate,
        };
        if truck.plate.is_none() && self.problems.is_empty() && (truck.cg_x.is_none() || truck.cg_z.is_none()) {
            // Without a plate there is nothing to infer the balance from.
            for field in [Field::FrontAxle, Field::SteerAxleLoad, Field::CgHeight] {
                if self.entered(field).is_none() {
                    self.problem(field, None, Rule::Required);
                }
            }
        }
        self.parts_leave_a_chassis(&truck);
        truck
    }

    /// x of the service weight's centre by moments about the front axle.
    fn balance(&mut self, wheelbase: f64, service: f64) -> Option<f64> {
        let (front, steer) = (self.entered(Field::FrontAxle), self.entered(Field::SteerAxleLoad));
        match (front, steer) {
            (Some(front), Some(steer)) => {
                let sum = front + steer;
                if service > 0.0 && (sum - service).abs() > rules::AXLE_SUM_TOLERANCE.value * service {
                    let rule = Rule::AxleSum { sum: Scalar::computed(sum), total: Scalar::computed(service) };
                    self.problem(Field::SteerAxleLoad, Some(steer), rule);
                }
                Some(-wheelbase * steer / sum)
            }
            (Some(_), None) => {
                self.problem(Field::SteerAxleLoad, None, Rule::Together { with: Field::FrontAxle.into() });
                None
            }
            (None, Some(_)) => {
                self.problem(Field::FrontAxle, None, Rule::Together { with: Field::SteerAxleLoad.into() });
                None
            }
            (None, None) => None,
        }
    }

    /// Two figures that say something only together.
    fn together(&mut self, one: Field, other: Field) {
        match (self.entered(one), self.entered(other)) {
            (Some(_), None) => self.problem(other, None, Rule::Together { with: one.into() }),
            (None, Some(_)) => self.problem(one, None, Rule::Together { with: other.into() }),
            _ => {}
        }
    }

    fn battery(&mut self, wheelbase: f64, plate: Option<&Plate>) -> Battery {
        let stated = self.needed(Field::BatteryStated);
        let fitted = match (self.entered(Field::BatteryFitted), plate) {
            (Some(fitted), _) => {
                let tolerance = self.tolerance(Field::BatteryFitted, fitted, 0.0);
                Span { lo: (fitted - tolerance).max(0.0), ..Span::about(fitted, tolerance) }
            }
            (None, Some(Plate { battery_min: Some(min), battery_max: Some(max), .. })) => {
                let window = Span { lo: min.min(stated), nominal: stated, hi: max.max(stated) };
                self.assume(Field::BatteryFitted, window, Basis::PlateWindow);
                window
            }
            _ => {
                self.assume(Field::BatteryFitted, Span::exact(stated), Basis::Worked);
                Span::exact(stated)
            }
        };
        let (behind, dx) = match self.entered(Field::BatteryBehind) {
            Some(behind) => (behind, self.tolerance(Field::BatteryBehind, behind, 0.0)),
            None => {
                let behind = rules::BATTERY_BEHIND.value * wheelbase;
                let spread = rules::BATTERY_BEHIND_SPREAD.value * wheelbase;
                self.assume(
                    Field::BatteryBehind,
                    Span::about(behind, spread),
                    Basis::Figure { id: rules::BATTERY_BEHIND.id },
                );
                (behind, spread)
            }
        };
        let (height, dz) = match self.entered(Field::BatteryHeight) {
            Some(height) => (height, self.tolerance(Field::BatteryHeight, height, 0.0)),
            None => {
                let (height, spread) = (rules::BATTERY_HEIGHT, rules::BATTERY_HEIGHT_SPREAD.value);
                self.assume(Field::BatteryHeight, Span::about(height.value, spread), Basis::Figure { id: height.id });
                (height.value, spread)
            }
        };
        Battery { stated, fitted, at: DVec3::new(-behind, 0.0, height), spread: DVec3::new(dx, 0.0, dz) }
    }

    fn axle(&mut self) -> Axle {
        let mass = self.or_figure(Field::AxleMass, rules::STEER_AXLE_MASS);
        let (pivot_low, pivot, pivot_high) = match self.entered(Field::PivotHeight) {
            Some(height) => {
                let tolerance = self.tolerance(Field::PivotHeight, height, 0.0);
                ((height - tolerance).max(0.0), height, height)
            }
            None => {
                let (low, high) = (rules::PIVOT_HEIGHT_LOW, rules::PIVOT_HEIGHT_HIGH);
                let range = Span::between(low.value, high.value);
                self.assume(Field::PivotHeight, range, Basis::Figure { id: low.id });
                (low.value, low.value, high.value)
            }
        };
        Axle { mass, pivot_low, pivot, pivot_high }
    }

    fn mast(&mut self, wheels: Wheels) -> Mast {
        let total = match wheels {
            Wheels::Three => rules::MAST_MASS_THREE,
            Wheels::Four => rules::MAST_MASS_FOUR,
        };
        let lift = self.needed(Field::MastLift);
        self.at_most(Field::FreeLift, Field::MastLift);
        let count = self.document.truck.mast.stages.len();
        let section = total.value / (count.max(1) + 1) as f64;
        let basis = || Basis::Figure { id: total.id };
        let outer = self.or_worked(Field::MastOuter, section, basis());
        let mut stages = Vec::new();
        for row in 0..count {
            let mass = self.or_worked(Place::in_row(Field::StageMass, row), section, basis());
            // The quickest a section can rise: all in equal steps, the last with the carriage.
            let ratio = (row + 1) as f64 / count as f64;
            stages.push((mass, self.or_worked(Place::in_row(Field::StageRatio, row), ratio, Basis::Worked)));
        }
        if stages.is_empty() {
            self.assume(Field::Stages, Span::exact(section), basis());
            stages.push((section, 1.0));
        }
        let lowered = lift / (stages.len() + 1) as f64 + rules::MAST_COLLAPSED_ADDED.value;
        let give = match self.entered(Field::MastGive) {
            Some(give) => Span { lo: 0.0, nominal: give, hi: give + self.tolerance(Field::MastGive, give, 0.0) },
            None => {
                let give = Span::between(0.0, rules::MAST_GIVE.value);
                self.assume(Field::MastGive, give, Basis::Figure { id: rules::MAST_GIVE.id });
                give
            }
        };
        Mast {
            lift,
            free_lift: self.or_worked(Field::FreeLift, 0.0, Basis::Zero),
            lowered: self.or_worked(Field::MastLowered, lowered, Basis::Figure { id: rules::MAST_COLLAPSED_ADDED.id }),
            tilt_back: self.needed(Field::MaxTiltBack).to_radians(),
            tilt_forward: self.needed(Field::MaxTiltForward).to_radians(),
            outer,
            stages,
            pivot: DVec3::new(
                self.or_figure(Field::MastPivotX, rules::MAST_PIVOT_X),
                0.0,
                self.or_figure(Field::MastPivotZ, rules::MAST_PIVOT_Z),
            ),
            give: Span { lo: give.lo.to_radians(), nominal: give.nominal.to_radians(), hi: give.hi.to_radians() },
            play: self.or_figure(Field::MastPlay, rules::MAST_PLAY).to_radians(),
        }
    }

    fn forks(&mut self, wheels: Wheels) -> Forks {
        let (carriage, pair) = match wheels {
            Wheels::Three => (rules::CARRIAGE_MASS_THREE, rules::FORKS_MASS_THREE),
            Wheels::Four => (rules::CARRIAGE_MASS_FOUR, rules::FORKS_MASS_FOUR),
        };
        let (spread, spread_hi) = match self.entered(Field::ForkSpread) {
            Some(spread) => (spread, spread),
            None => {
                let (set, wide) = (rules::FORK_SPREAD.value, rules::FORK_SPREAD_WIDE.value);
                let range = Span { lo: set, nominal: set, hi: wide };
                self.assume(Field::ForkSpread, range, Basis::Figure { id: rules::FORK_SPREAD.id });
                (set, wide)
            }
        };
        let (new, now) = (self.entered(Field::BladeThickness), self.entered(Field::BladeThicknessNow));
        self.at_most(Field::BladeThicknessNow, Field::BladeThickness);
        if now.is_some() && new.is_none() {
            let with = Field::BladeThicknessNow.into();
            self.problem(Field::BladeThickness, None, Rule::Together { with });
        }
        Forks {
            carriage: self.or_figure(Field::Carriage, carriage),
            pair: self.or_figure(Field::ForkPair, pair),
            length: self.or_figure(Field::ForkLength, rules::FORK_LENGTH),
            spread,
            spread_hi,
            blade: self.blade(spread),
            thickness: new.unwrap_or(rules::BLADE_THICKNESS.value),
            wear: new.zip(now).map(|(new, now)| 1.0 - now / new),
            stamped: self.stamped(),
            extension: self.extension(),
        }
    }

    /// Width of a blade: two of them fit into the width over both.
    fn blade(&mut self, spread: f64) -> Span {
        let most = 0.5 * spread;
        match self.entered(Field::BladeWidth) {
            Some(width) if width > most => {
                let limit = Scalar::computed(most);
                self.problem(Field::BladeWidth, Some(width), Rule::NotMoreThan { limit, of: Field::ForkSpread.into() });
                Span::exact(most)
            }
            Some(width) => Span::exact(width),
            None => {
                let width = Span::between(rules::BLADE_WIDTH_LEAST.value.min(most), rules::BLADE_WIDTH.value.min(most));
                self.assume(Field::BladeWidth, width, Basis::Figure { id: rules::BLADE_WIDTH.id });
                width
            }
        }
    }

    fn stamped(&mut self) -> Option<(f64, f64)> {
        let stamped = self.entered(Field::ForkStamped)?;
        Some((stamped, self.or_figure(Field::ForkStampedCentre, rules::FORK_STAMP_CENTRE)))
    }

    fn extension(&mut self) -> Option<(f64, f64)> {
        let (length, mass) = (self.entered(Field::Extension), self.entered(Field::ExtensionMass));
        match (length, mass) {
            (Some(_), None) => self.problem(Field::ExtensionMass, None, Rule::Required),
            (None, Some(_)) => self.problem(Field::Extension, None, Rule::Required),
            _ => {}
        }
        length.zip(mass)
    }

    fn attachment(&mut self) -> Option<Attachment> {
        self.document.truck.attachment.as_ref()?;
        Some(Attachment {
            name: self.document.truck.attachment.as_ref().map(|a| a.name.trim().to_owned()).unwrap_or_default(),
            mass: self.needed(Field::AttachmentMass),
            ahead: self.needed(Field::AttachmentAhead),
            above: self.or_figure(Field::AttachmentAbove, rules::ATTACHMENT_ABOVE_FORKS),
            lost_load: self.needed(Field::LostLoad),
        })
    }

    fn parts_leave_a_chassis(&mut self, truck: &Truck) {
        let moving: f64 = truck.mast.stages.iter().map(|s| s.0).sum();
        let axle = truck.axle.as_ref().map_or(0.0, |a| a.mass);
        let parts = truck.battery.stated + truck.mast.outer + moving + truck.forks.carriage + truck.forks.pair + axle;
        let limit = 0.9 * truck.service;
        if truck.service > 0.0 && parts > limit {
            let rule = Rule::PartsWithin { parts: Scalar::computed(parts), limit: Scalar::computed(limit) };
            self.problem(Field::Service, Some(truck.service), rule);
        }
    }
}
