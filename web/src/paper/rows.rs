//! What was entered, line by line: as typed, how it is known, how far it may be out; and what is assumed.

use crate::entries::{OF_PART, dimensions};
use crate::figures::Printer;
use crate::form::Form;
use crate::known;
use crate::sentences::name_of;
use crate::words::{fill, words};
use standfast_core::document::{GivenAs, RampDown, Wheels};
use standfast_core::place::{Field, Place};
use standfast_core::units::Rounding;

/// One line.
#[derive(Debug, PartialEq)]
pub struct Row {
    pub name: String,
    pub value: String,
    /// How it is known, or that it is assumed; nothing for a choice.
    pub known: String,
}

/// The lines of a group.
#[derive(Debug, PartialEq)]
pub struct Group {
    pub name: &'static str,
    pub rows: Vec<Row>,
}

/// A row of the plate is one line.
const OF_PLATE_ROW: [Field; 3] = [Field::PlateHeight, Field::PlateLoadCentre, Field::PlateCapacity];

/// All groups, in the order of the page.
pub fn groups(form: &Form) -> Vec<Group> {
    let w = &words().paper;
    let mut groups: Vec<Group> =
        [w.group_truck, w.group_plate, w.group_load, w.group_move].map(|name| Group { name, rows: Vec::new() }).into();
    let teller = Teller { form, print: Printer(form.system) };
    groups[0].rows = teller.of_truck();
    groups[1].rows = teller.of_plate();
    groups[2].rows = teller.of_load();
    groups[3].rows = teller.of_move();
    let in_lines = |p: &Place| OF_PLATE_ROW.contains(&p.field) || OF_PART.contains(&p.field);
    for (&place, _) in form.entries.numbers.iter().filter(|(p, _)| form.entries.counts(**p) && !in_lines(p)) {
        if let Some(row) = teller.figure(place) {
            groups[group_of(place)].rows.push(row);
        }
    }
    groups[1].rows.extend(teller.plate_rows());
    groups[2].rows.extend(teller.parts());
    for assumed in form.answer.assessment.iter().flat_map(|a| &a.assumed) {
        let value = teller.print.taken(assumed.place, assumed.lo.get(), assumed.hi.get());
        let name = fill(w.assumed, &[("name", &name_of(assumed.place))]);
        let row = Row { name, value, known: String::new() };
        groups[group_of(assumed.place)].rows.push(row);
    }
    groups.retain(|g| !g.rows.is_empty());
    groups
}

fn group_of(place: Place) -> usize {
    let path = place.field.row().path;
    match path.split('.').next() {
        Some("truck") if path.starts_with("truck.plate") => 1,
        Some("truck") => 0,
        Some("load") => 2,
        _ => 3,
    }
}

struct Teller<'a> {
    form: &'a Form,
    print: Printer,
}

impl Teller<'_> {
    fn choice(&self, field: Field, value: &str) -> Option<Row> {
        let name = (words().field)(field).name.to_owned();
        (!value.trim().is_empty()).then(|| Row { name, value: value.trim().to_owned(), known: String::new() })
    }

    /// A figure as typed; nothing where there is no place for it.
    fn figure(&self, place: Place) -> Option<Row> {
        let entries = &self.form.entries;
        let text = entries.shown(place, self.form.system);
        if text.trim().is_empty() || !self.is_there(place) {
            return None;
        }
        let known = match self.form.answer.problem(place) {
            Some(_) => words().paper.unread.to_owned(),
            None if place.field.takes_tolerance() => known::line(self.form, place),
            None => String::new(),
        };
        Some(Row { name: name_of(place), value: self.typed(place), known })
    }

    /// Whether the list that it belongs to is so long.
    fn is_there(&self, place: Place) -> bool {
        place.number(&mut self.form.answer.document.clone()).is_some()
    }

    /// As typed, with its unit.
    fn typed(&self, place: Place) -> String {
        let entries = &self.form.entries;
        let text = entries.shown(place, self.form.system);
        let unit = entries.unit(place, self.form.system).map(|u| u.symbol()).unwrap_or_default();
        match unit {
            "" => text,
            "\u{b0}" => format!("{text}{unit}"),
            _ => format!("{text}\u{a0}{unit}"),
        }
    }

    fn of_truck(&self) -> Vec<Row> {
        let (w, r, e) = (&words().paper, &words().request, &self.form.entries);
        let wheels = match e.wheels {
            Some(Wheels::Three) => r.three,
            Some(Wheels::Four) => r.four,
            None => "",
        };
        let tyres = e.tyres.map(words().plate.tyres_button).unwrap_or_default();
        let fitted = match (e.attachment, e.attachment_name.trim()) {
            (false, _) => w.bare_forks,
            (true, "") => words().card.attachment_there,
            (true, name) => name,
        };
        let rows = [
            self.choice(Field::TypeName, &e.type_name),
            self.choice(Field::Serial, &e.serial),
            self.choice(Field::Wheels, wheels),
            self.choice(Field::Tyres, tyres),
            Some(Row { name: w.fitted.to_owned(), value: fitted.to_owned(), known: String::new() }),
        ];
        rows.into_iter().flatten().collect()
    }

    fn of_plate(&self) -> Vec<Row> {
        let (w, e) = (&words().paper, &self.form.entries);
        if !e.plate {
            return vec![Row { name: w.no_plate.to_owned(), value: String::new(), known: String::new() }];
        }
        let for_front = e.plate_for.map(words().request.front_end).unwrap_or_default();
        let tyres = e.plate_tyres.map(words().plate.tyres_button).unwrap_or_default();
        let named = if e.plate_extensions { w.yes } else { w.no };
        let with_extensions = self.form.answer.document.truck.forks.extension_m.is_some();
        let rows = [
            self.choice(Field::PlateIssued, &e.plate_issued),
            self.choice(Field::PlateFor, for_front),
            self.choice(Field::PlateAttachment, &e.plate_attachment),
            self.choice(Field::PlateTyres, tyres),
            self.choice(Field::PlateExtensions, named).filter(|_| with_extensions),
        ];
        rows.into_iter().flatten().collect()
    }

    fn plate_rows(&self) -> Vec<Row> {
        let w = &words().paper;
        let rows = if self.form.entries.plate { self.form.entries.plate_rows } else { 0 };
        let row = |k: usize| {
            let [height, centre, mass] = OF_PLATE_ROW.map(|f| self.typed(Place::in_row(f, k)));
            let value = fill(w.plate_row, &[("mass", &mass), ("centre", &centre)]);
            Row { name: fill(w.up_to, &[("height", &height)]), value, known: String::new() }
        };
        (0..rows).map(row).collect()
    }

    fn of_load(&self) -> Vec<Row> {
        let (w, e) = (&words().load, &self.form.entries);
        let underside = e.underside.map(w.underside).unwrap_or_default();
        let hangs = if e.hanging { w.hangs } else { w.lies };
        let material = e.material.filter(|_| e.given_as == GivenAs::Trace).map(w.material).unwrap_or_default();
        let rows = [
            self.choice(Field::LoadMaterial, material),
            self.choice(Field::Turned, (w.turned)(e.turned)),
            self.choice(Field::Underside, underside).filter(|_| !e.hanging),
            self.choice(Field::Hanging, hangs),
        ];
        rows.into_iter().flatten().collect()
    }

    /// The parts, one line each: shape and sizes, what it weighs or is made of, where it is.
    fn parts(&self) -> Vec<Row> {
        let (w, e) = (&words().paper, &self.form.entries);
        if e.given_as != GivenAs::Parts {
            return Vec::new();
        }
        let part = |(k, part): (usize, &crate::entries::PartEntry)| {
            let at = |field: Field| Place::in_row(field, k);
            let entered = |field: Field| e.is_entered(at(field));
            let name = match part.name.trim() {
                "" => fill(words().load.part_nth, &[("n", &(k + 1).to_string())]),
                name => name.to_owned(),
            };
            let sizes = part.shape.map(dimensions).unwrap_or_default();
            let sizes: Vec<_> = sizes.iter().map(|f| self.typed(at(*f))).collect();
            let shape = part.shape.map(words().parts.shape).unwrap_or_default();
            let made = if entered(Field::PartMass) {
                self.typed(at(Field::PartMass))
            } else {
                part.material.map(words().load.material).unwrap_or_default().to_owned()
            };
            let place = [Field::PartAhead, Field::PartLeft, Field::PartAbove].map(|f| self.typed(at(f)));
            let place = fill(w.at, &[("ahead", &place[0]), ("left", &place[1]), ("above", &place[2])]);
            let value = [shape.to_owned(), sizes.join(" \u{d7} "), made, place];
            let value: Vec<_> = value.into_iter().filter(|text| !text.is_empty()).collect();
            let mass = at(Field::PartMass);
            let known = if entered(Field::PartMass) { known::line(self.form, mass) } else { String::new() };
            Row { name, value: value.join(", "), known }
        };
        e.parts.iter().enumerate().map(part).collect()
    }

    fn of_move(&self) -> Vec<Row> {
        let (w, e) = (&words().drive, &self.form.entries);
        let down = match e.drive.ramp_down {
            Some(RampDown::Forwards) => w.forwards,
            _ => w.backwards,
        };
        let rows = [self.choice(Field::RampDown, down).filter(|_| e.is_entered(Field::RampGrade.into()))];
        rows.into_iter().flatten().collect()
    }
}

/// A weight that may be lifted.
pub fn allowed(print: Printer, kg: f64) -> String {
    print.mass(kg, Rounding::Down)
}
