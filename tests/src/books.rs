//! Truck books at random, with something in every part. All invented.

use crate::draw::Draws;
use crate::sensible;
use standfast_core::book::{AttachmentRecord, Book, CheckRecord, LoadRecord, Of, Outcome, SetUp, TruckRecord};
use standfast_core::checklist::{Answer, Item};
use standfast_core::document::{By, Document, Known, Part, Tyres, WeighPoint};
use standfast_core::example;
use standfast_core::verdict::State;

/// Letters that a reader or a table may stumble over.
const TEXTS: [&str; 8] =
    ["", "Copperbeck 3", "=1+1", "a \"quoted\" \\ name", "Gr\u{fc}n\u{2028}\u{1f4e6}", " ", "\u{0}\n\t", "trucks[0]"];

fn text(draws: &mut Draws) -> String {
    draws.one_of(&TEXTS).unwrap_or_default().to_owned()
}

fn list<T>(draws: &mut Draws, most: usize, mut one: impl FnMut(&mut Draws, usize) -> T) -> Vec<T> {
    (0..draws.count(0..most)).map(|k| one(draws, k)).collect()
}

/// A check with something in every part.
pub fn check(draws: &mut Draws) -> Document {
    let mut document = sensible::document(draws);
    document.note = text(draws);
    let truck = &mut document.truck;
    (truck.name, truck.serial, truck.type_name) = (text(draws), text(draws), text(draws));
    truck.tyres = draws.one_of(&[None, Some(Tyres::Cushion), Some(Tyres::Pneumatic)]).flatten();
    truck.attachment.get_or_insert_default().name = text(draws);
    let plate = truck.plate.get_or_insert_default();
    plate.rows.push(Default::default());
    (plate.issued, plate.attachment) = ("2026-05-14".to_owned(), text(draws));
    (plate.tyres, plate.mast_lift_m) = (Some(Tyres::SolidPneumatic), Some(draws.within(2.0..6.0)));
    truck.mast.stages.push(Default::default());
    document.load.parts.push(Part { name: text(draws), cut_from: Some(0), ..Part::default() });
    let trace = document.load.trace.get_or_insert_default();
    trace.outline.push([1.5, -2.5]);
    trace.picture = Some([800.0, 600.0]);
    trace.holes = vec![vec![[0.5, 1e-300]]];
    let weighing = document.load.weighing.get_or_insert_default();
    weighing.points.push(WeighPoint { reading_kg: Some(1.0), ..WeighPoint::default() });
    let tolerance = Some(draws.within(0.0..9.0));
    document.known.insert("truck.tread_m".to_owned(), Known { by: Some(By::Tape), tolerance });
    for item in Item::ALL {
        let answer = draws.one_of(&[None, Some(Answer::Yes), Some(Answer::No), Some(Answer::NotThere)]).flatten();
        document.checklist.extend(answer.map(|answer| (*item, answer)));
    }
    document
}

/// A book. Two of one `family` have many ids in common.
pub fn book(draws: &mut Draws, family: u64) -> Book {
    let check = check(draws);
    let id = |kind: &str, k: usize| format!("{kind}{}", (k as u64 + family) % 7);
    let set_up = |draws: &mut Draws, k: usize| {
        let mut truck = check.truck.clone();
        truck.mast.lift_m = Some(draws.within(2.0..6.0));
        let known = check.known.clone();
        SetUp { id: id("s", k), name: text(draws), note: text(draws), archived: draws.chance(0.2), truck, known }
    };
    let truck = |draws: &mut Draws, k: usize| TruckRecord {
        id: id("r", k),
        name: text(draws),
        note: text(draws),
        archived: draws.chance(0.2),
        set_ups: list(draws, 3, set_up),
    };
    let attachment = |draws: &mut Draws, k: usize| AttachmentRecord {
        id: id("a", k),
        note: text(draws),
        archived: draws.chance(0.2),
        attachment: example::attachments().swap_remove(k % 3).attachment,
    };
    let load = |draws: &mut Draws, k: usize| LoadRecord {
        id: id("l", k),
        note: text(draws),
        archived: false,
        load: check.load.clone(),
        known: check.known.clone(),
    };
    let record = |draws: &mut Draws, k: usize| CheckRecord {
        id: id("c", k),
        at: "2026-05-14T09:30:00+02:00".to_owned(),
        who: text(draws),
        program: "0.1.0".to_owned(),
        of: draws.chance(0.5).then(|| Of { truck: text(draws), set_up: text(draws) }),
        check: check.clone(),
        outcome: Outcome {
            verdict: draws.one_of(&[None, Some(State::Go), Some(State::Hold), Some(State::NoGo)]).flatten(),
            reason: text(draws),
            used: draws.chance(0.5).then(|| draws.within(0.0..2.0)),
        },
    };
    Book {
        trucks: list(draws, 4, truck),
        attachments: list(draws, 4, attachment),
        loads: list(draws, 3, load),
        log: list(draws, 4, record),
        ..Book::default()
    }
}

/// One of everything, the same every time.
pub fn full() -> Book {
    let mut draws = (0..).map(Draws::seeded);
    let whole = |b: &Book| {
        let lists = [b.trucks.len(), b.attachments.len(), b.loads.len(), b.log.len()];
        lists.iter().all(|n| *n > 0) && b.trucks.iter().any(|t| !t.set_ups.is_empty())
    };
    draws.find_map(|mut draws| Some(book(&mut draws, 0)).filter(whole)).unwrap_or_default()
}
