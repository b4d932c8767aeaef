//! The state of the page, and all that can happen to it.

use crate::answer::Card;
use crate::drawing::Phase;
use crate::entries::{Entries, WeighEntry};
use crate::grip::Grip;
use crate::history::{History, Typing};
use crate::notice::Notice;
use crate::out::Out;
use crate::places::Screen;
use standfast_core::checklist::{Answer as Seen, Item};
use standfast_core::document::{
    By, CentreKnown, GivenAs, PlateFor, RaisedEnd, RampDown, Turned, Tyres, WeightKnown, Wheels,
};
use standfast_core::example;
use standfast_core::friction::Underside;
use standfast_core::material::Material;
use standfast_core::place::{Field, Place};
use standfast_core::step::StepId;
use standfast_core::units::System;
use standfast_core::validate::{MOST_PLATE_ROWS, MOST_STAGES};
use std::rc::Rc;
use yew::prelude::*;

/// The state. What can be derived from it is not in it.
#[derive(Clone, Debug, PartialEq)]
pub struct State {
    pub place: Screen,
    pub entries: Rc<Entries>,
    pub system: System,
    /// The step the person picked; else the tightest is shown.
    pub picked: Option<StepId>,
    /// The card that is open.
    pub open: Option<Card>,
    /// The figure of which it is open to change how it is known.
    pub known: Option<Place>,
    /// The bench that is open.
    pub bench: Option<Bench>,
    pub history: Rc<History>,
    /// What is being dragged.
    pub grip: Option<Rc<Grip>>,
    /// What stood when something was taken hold of on a bench.
    pub drawn_from: Option<Rc<Entries>>,
    /// Something to say or to ask.
    pub notice: Option<Notice>,
    /// Whether the sheet to ask for a plate is open.
    pub request: bool,
    /// What is to be printed or handed on, in the place of the page.
    pub out: Option<Out>,
}

/// A free text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Text {
    Note,
    TruckName,
    LoadName,
    AttachmentName,
    Serial,
    TypeName,
    PlateIssued,
    PlateAttachment,
    /// Of one part of the load, from 0.
    PartName(usize),
}

/// Where a load is put together: it takes the place of the drawings.
#[derive(Clone, Copy, Debug, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Bench {
    /// Its parts.
    Parts,
    /// Its traced outline.
    Trace,
}

impl Bench {
    /// The bench for a way of giving the shape.
    pub fn of(given_as: GivenAs) -> Option<Self> {
        match given_as {
            GivenAs::Block => None,
            GivenAs::Parts => Some(Self::Parts),
            GivenAs::Trace => Some(Self::Trace),
        }
    }

    /// The bench that a figure or choice is entered on, if it is not on a card.
    pub fn holds(place: Place) -> Option<Self> {
        let path = place.field.row().path;
        if path.starts_with("load.parts") {
            Some(Self::Parts)
        } else if path.starts_with("load.trace") {
            Some(Self::Trace)
        } else {
            None
        }
    }
}

/// A choice made.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Choice {
    Wheels(Wheels),
    Plate(bool),
    PlateFor(PlateFor),
    PlateExtensions(bool),
    /// None where nobody says.
    Tyres(Option<Tyres>),
    PlateTyres(Option<Tyres>),
    Attachment(bool),
    WeightKnown(WeightKnown),
    CentreKnown(CentreKnown),
    GivenAs(GivenAs),
    Material(Option<Material>),
    Turned(Turned),
    Underside(Option<Underside>),
    Hanging(bool),
    /// Weighed on so many points of support; on none, not weighed.
    Supports(usize),
    RaisedEnd(Option<RaisedEnd>),
    /// Whether something of the drive is looked at.
    LookAt(Field, bool),
    RampDown(RampDown),
    /// Whether a slope is typed in degrees; the slope itself stays.
    InDegrees(Field, bool),
    /// How a figure is known: a tolerance typed for another way goes with that.
    KnownBy(Place, By),
    /// What was seen of a thing before the lift; none where that is taken back.
    Seen(Item, Option<Seen>),
    /// Known as it usually is, without a tolerance of one's own.
    AsUsual(Place),
}

/// What can happen.
#[derive(Clone, Debug, PartialEq)]
pub enum Action {
    /// A figure's text has changed.
    Type(Place, String),
    /// The text of a figure's tolerance has changed.
    Tolerance(Place, String),
    /// A free text has changed.
    Write(Text, String),
    /// An input was left.
    Settle,
    Choose(Choice),
    AddPlateRow,
    RemovePlateRow(usize),
    AddStage,
    RemoveStage(usize),
    /// Changed entries: one step to undo.
    Set(Rc<Entries>),
    /// Changed entries on the way of a drag: all of it is one step to undo, kept when it ends.
    Draw(Rc<Entries>, Phase),
    /// Other entries altogether: an example, a file, nothing.
    Replace(Rc<Entries>, Option<Card>),
    Undo,
    Redo,
    /// To another place.
    Go(Screen),
    Units(System),
    Pick(StepId),
    Open(Option<Card>),
    /// Open to change how a figure is known.
    Known(Option<Place>),
    Bench(Option<Bench>),
    /// The sheet to ask for a plate, open or not.
    Request(bool),
    Out(Option<Out>),
    Hold(Rc<Grip>),
    /// Moved so far since it was taken hold of.
    Drag((f64, f64, f64)),
    Release((f64, f64, f64)),
    Say(Notice),
    Hush,
}

impl State {
    /// The first screen: an invented example.
    pub fn example() -> Self {
        Self::with(Entries::from_document(&example::document(example::THREE_WHEEL)))
    }

    /// These entries and nothing else set.
    pub fn with(entries: Entries) -> Self {
        Self {
            place: Screen::Check,
            entries: Rc::new(entries),
            system: System::default(),
            picked: None,
            open: Some(Card::Load),
            known: None,
            bench: None,
            history: Rc::default(),
            grip: None,
            drawn_from: None,
            notice: None,
            request: false,
            out: None,
        }
    }

    /// The same with other entries; the state itself where they are the same.
    fn changed(self: Rc<Self>, typing: Option<Typing>, change: impl FnOnce(&mut Entries)) -> Rc<Self> {
        let mut entries = Entries::clone(&self.entries);
        change(&mut entries);
        if entries == *self.entries {
            return self;
        }
        let mut history = History::clone(&self.history);
        history.note(&self.entries, typing);
        Rc::new(Self { entries: Rc::new(entries), history: Rc::new(history), ..State::clone(&self) })
    }

    fn travelled(self: Rc<Self>, step: fn(&mut History, &Rc<Entries>) -> Option<Rc<Entries>>) -> Rc<Self> {
        let mut history = History::clone(&self.history);
        match step(&mut history, &self.entries) {
            Some(entries) => {
                Rc::new(Self { entries, history: Rc::new(history), grip: None, notice: None, ..State::clone(&self) })
            }
            None => self,
        }
    }

    /// The bench that shows: the one that is open, while the shape is given that way.
    pub fn bench(&self) -> Option<Bench> {
        self.bench.filter(|b| Bench::of(self.entries.given_as) == Some(*b))
    }

    /// Whether something is being dragged: it is kept when that ends.
    pub fn is_dragging(&self) -> bool {
        self.grip.is_some() || self.drawn_from.is_some()
    }

    fn drawn(self: Rc<Self>, entries: Rc<Entries>, phase: Phase) -> Rc<Self> {
        let mut next = State::clone(&self);
        next.drawn_from = Some(self.drawn_from.clone().unwrap_or_else(|| Rc::clone(&self.entries)));
        if *entries != *self.entries {
            next.entries = entries;
        }
        let next = Rc::new(next);
        if phase == Phase::End { next.drawn_out() } else { next }
    }

    /// Ends a drag on a bench: what stood before all of it is one step to undo.
    fn drawn_out(self: Rc<Self>) -> Rc<Self> {
        let Some(start) = self.drawn_from.clone() else { return self };
        let mut next = State::clone(&self);
        next.drawn_from = None;
        if start != self.entries {
            let mut history = History::clone(&self.history);
            history.settle();
            history.note(&start, None);
            next.history = Rc::new(history);
        }
        Rc::new(next)
    }

    fn dragged(self: Rc<Self>, by: (f64, f64, f64), ends: bool) -> Rc<Self> {
        let Some(grip) = self.grip.clone() else { return self };
        let entries = grip.moved(by, self.system);
        let mut next = State::clone(&self);
        if entries != *self.entries {
            // One step for the whole movement: what stood before it is noted at its first change.
            if self.entries == *grip.start() {
                let mut history = History::clone(&self.history);
                history.settle();
                history.note(grip.start(), None);
                next.history = Rc::new(history);
            }
            next.entries = Rc::new(entries);
        } else if !ends {
            return self;
        }
        if ends {
            next.grip = None;
        }
        Rc::new(next)
    }
}

impl Reducible for State {
    type Action = Action;

    fn reduce(self: Rc<Self>, action: Action) -> Rc<Self> {
        let system = self.system;
        // A drag whose end was lost ends with whatever comes next.
        let this = if matches!(action, Action::Draw(..)) { self } else { self.drawn_out() };
        match action {
            Action::Type(place, text) => this.changed(Some(Typing::Figure(place)), |e| e.enter(place, &text, system)),
            Action::Tolerance(place, text) => {
                let next = this.changed(Some(Typing::Tolerance(place)), |e| e.enter_tolerance(place, &text, system));
                // Open because of what was wrong, it must not fold away under the hand that puts it right.
                Rc::new(Self { known: Some(place), ..State::clone(&next) })
            }
            Action::Write(which, text) => this.changed(Some(Typing::Free(which)), |e| match which {
                Text::Note => e.note = text,
                Text::TruckName => e.truck_name = text,
                Text::LoadName => e.load_name = text,
                Text::AttachmentName => e.attachment_name = text,
                Text::Serial => e.serial = text,
                Text::TypeName => e.type_name = text,
                Text::PlateIssued => e.plate_issued = text,
                Text::PlateAttachment => e.plate_attachment = text,
                Text::PartName(part) => {
                    if let Some(part) = e.parts.get_mut(part) {
                        part.name = text;
                    }
                }
            }),
            Action::Settle => {
                if !this.history.is_typing() {
                    return this;
                }
                let mut history = History::clone(&this.history);
                history.settle();
                Rc::new(Self { history: Rc::new(history), ..State::clone(&this) })
            }
            Action::Choose(Choice::GivenAs(_)) if this.bench.is_some() => {
                Rc::new(Self { bench: None, ..State::clone(&this) }).reduce(action)
            }
            Action::Choose(choice) => this.changed(None, |e| match choice {
                Choice::Wheels(wheels) => e.wheels = Some(wheels),
                Choice::Plate(there) => {
                    e.plate = there;
                    e.plate_rows = e.plate_rows.max(1);
                }
                Choice::PlateFor(front_end) => e.plate_for = Some(front_end),
                Choice::PlateExtensions(named) => e.plate_extensions = named,
                Choice::Tyres(tyres) => e.tyres = tyres,
                Choice::PlateTyres(tyres) => e.plate_tyres = tyres,
                Choice::Attachment(fitted) => e.attachment = fitted,
                Choice::WeightKnown(how) => e.weight_is_known(None, how),
                Choice::CentreKnown(how) => e.centre_known = Some(how),
                Choice::GivenAs(how) => {
                    e.given_as = how;
                    if how == GivenAs::Trace {
                        e.trace.get_or_insert_default();
                    }
                }
                Choice::Material(material) => e.material = material,
                Choice::Turned(turned) => e.turned = turned,
                Choice::Underside(underside) => e.underside = underside,
                Choice::Hanging(hanging) => e.hanging = hanging,
                Choice::Supports(0) => e.weighing = None,
                Choice::Supports(points) => {
                    e.weighing = Some(WeighEntry { points, ..e.weighing.unwrap_or_default() });
                    if points == 2 {
                        e.bearers_across();
                    }
                }
                Choice::RaisedEnd(end) => {
                    if let Some(weighing) = &mut e.weighing {
                        weighing.raised_end = end;
                    }
                }
                Choice::LookAt(field, so) => match field {
                    Field::Brake => e.drive.brake = Some(so),
                    Field::Corner => e.drive.corner = Some(so),
                    Field::CornerEmpty => e.drive.corner_empty = Some(so),
                    _ => {}
                },
                Choice::RampDown(how) => e.drive.ramp_down = Some(how),
                Choice::InDegrees(field, so) => {
                    if let Some(degrees) = e.drive.in_degrees(field) {
                        *degrees = so;
                    }
                }
                Choice::KnownBy(place, by) => e.choose_way(place, by),
                Choice::AsUsual(place) => e.as_usual(place),
                Choice::Seen(item, Some(seen)) => drop(e.checklist.insert(item, seen)),
                Choice::Seen(item, None) => drop(e.checklist.remove(&item)),
            }),
            Action::AddPlateRow => this.changed(None, |e| {
                if e.plate_rows < MOST_PLATE_ROWS {
                    e.add_plate_row();
                }
            }),
            Action::RemovePlateRow(row) => this.changed(None, |e| e.remove_plate_row(row)),
            Action::AddStage => this.changed(None, |e| e.stages = (e.stages + 1).min(MOST_STAGES.max(e.stages))),
            // What was open stood for a row that is another one now.
            Action::RemoveStage(_) if this.known.is_some() => {
                Rc::new(Self { known: None, ..State::clone(&this) }).reduce(action)
            }
            Action::RemoveStage(row) => this.changed(None, |e| e.remove_stage(row)),
            Action::Set(entries) => this.changed(None, |e| *e = Entries::clone(&entries)),
            Action::Draw(entries, phase) => this.drawn(entries, phase),
            Action::Replace(entries, open) => {
                let next = this.changed(None, |e| *e = Entries::clone(&entries));
                Rc::new(Self {
                    place: Screen::Check,
                    picked: None,
                    open,
                    known: None,
                    bench: None,
                    grip: None,
                    notice: None,
                    ..State::clone(&next)
                })
            }
            Action::Undo => this.travelled(History::undo),
            Action::Redo => this.travelled(History::redo),
            Action::Go(place) if place == this.place => this,
            Action::Go(place) => Rc::new(Self { place, known: None, ..State::clone(&this) }),
            Action::Units(system) if system == this.system => this,
            Action::Units(system) => Rc::new(Self { system, ..State::clone(&this) }),
            Action::Pick(step) if this.picked == Some(step) => this,
            Action::Pick(step) => Rc::new(Self { picked: Some(step), ..State::clone(&this) }),
            Action::Open(open) if open == this.open => this,
            Action::Open(open) => Rc::new(Self { open, known: None, ..State::clone(&this) }),
            Action::Known(known) if known == this.known => this,
            Action::Known(known) => Rc::new(Self { known, ..State::clone(&this) }),
            Action::Bench(bench) if bench == this.bench => this,
            Action::Bench(bench) => Rc::new(Self { bench, ..State::clone(&this) }),
            Action::Request(request) if request == this.request => this,
            Action::Request(request) => Rc::new(Self { request, ..State::clone(&this) }),
            Action::Out(out) if out == this.out => this,
            Action::Out(out) => Rc::new(Self { out, ..State::clone(&this) }),
            Action::Hold(grip) => Rc::new(Self { grip: Some(grip), ..State::clone(&this) }),
            Action::Drag(by) => this.dragged(by, false),
            Action::Release(by) => this.dragged(by, true),
            Action::Say(notice) => Rc::new(Self { notice: Some(notice), ..State::clone(&this) }),
            Action::Hush if this.notice.is_none() => this,
            Action::Hush => Rc::new(Self { notice: None, ..State::clone(&this) }),
        }
    }
}

/// Where components send what happens; it is given by the page.
#[hook]
pub fn use_act() -> Callback<Action> {
    use_context::<Callback<Action>>().unwrap_or_else(Callback::noop)
}

#[cfg(test)]
mod tests;
