use super::*;
use crate::answer::Answer;
use crate::drawing::Handle;
use standfast_core::place::Field;

fn after(state: State, actions: impl IntoIterator<Item = Action>) -> Rc<State> {
    actions.into_iter().fold(Rc::new(state), |state, action| state.reduce(action))
}

fn typed(text: &str) -> Action {
    Action::Type(Field::LoadMass.into(), text.to_owned())
}

fn mass(state: &State) -> String {
    state.entries.shown(Field::LoadMass.into(), System::Metric)
}

#[test]
fn letters_undo_together_until_the_field_is_left() {
    let state = after(State::example(), [typed("1"), typed("15"), Action::Settle, typed("150"), Action::Undo]);
    assert_eq!(mass(&state), "15");
    let state = state.reduce(Action::Undo);
    assert_eq!(mass(&state), "1050");
    let state = state.reduce(Action::Redo).reduce(Action::Redo).reduce(Action::Redo);
    assert_eq!(mass(&state), "150");
}

#[test]
fn a_name_is_one_step_to_undo() {
    let write = |text: &str| Action::Write(Text::LoadName, text.to_owned());
    let state = after(State::with(Entries::blank()), [write("K"), write("Ki"), write("Kiln"), Action::Undo]);
    assert_eq!(state.entries.load_name, "");
}

#[test]
fn starting_anew_is_undone_like_anything_else() {
    let start = Action::Replace(Rc::new(Entries::blank()), Some(Card::Truck));
    let state = after(State::example(), [typed("1581"), Action::Pick(StepId::Travel), start]);
    assert_eq!((*state.entries == Entries::blank(), state.picked, state.open), (true, None, Some(Card::Truck)));
    assert_eq!(mass(&state.reduce(Action::Undo)), "1581");
}

#[test]
fn what_changes_nothing_gives_the_very_same_state() {
    let state = Rc::new(State::example());
    for action in [
        typed("1050"),
        Action::Settle,
        Action::Undo,
        Action::Redo,
        Action::Units(System::Metric),
        Action::Open(Some(Card::Load)),
        Action::Hush,
        Action::Drag((1.0, 1.0, 1.0)),
        Action::Choose(Choice::Plate(true)),
        Action::RemovePlateRow(99),
    ] {
        assert!(Rc::ptr_eq(&state, &Rc::clone(&state).reduce(action.clone())), "{action:?}");
    }
}

#[test]
fn units_there_and_back_leave_the_entries_alone() {
    let state = Rc::new(State::example());
    let us = Rc::clone(&state).reduce(Action::Units(System::Us));
    assert!(Rc::ptr_eq(&state.entries, &us.entries));
    assert_eq!(*us.reduce(Action::Units(System::Metric)), *state);
}

#[test]
fn one_drag_is_one_step_to_undo() {
    let state = Rc::new(State::example());
    let answer = Answer::of(&state.entries);
    let grip = Grip::of(Handle::Load, StepId::RaisedUpright, &answer, &state.entries).expect("a load");
    let before = Rc::clone(&state);
    let moves = [0.01, 0.1, 0.3].map(|up| Action::Drag((0.0, 0.0, up)));
    let state = moves.into_iter().fold(state.reduce(Action::Hold(Rc::new(grip))), |s, a| s.reduce(a));
    let state = state.reduce(Action::Release((0.0, 0.0, 0.35)));
    assert_eq!(state.entries.shown(Field::LiftHeight.into(), System::Metric), "3550");
    assert_eq!(state.grip, None);
    assert_eq!(state.reduce(Action::Undo).entries, before.entries);
}

#[test]
fn lists_grow_no_longer_than_the_program_takes() {
    let state = after(State::example(), std::iter::repeat_n(Action::AddPlateRow, 60));
    assert_eq!(state.entries.plate_rows, MOST_PLATE_ROWS);
    let state = after(State::example(), std::iter::repeat_n(Action::AddStage, 9));
    assert_eq!(state.entries.stages, MOST_STAGES);
}

fn noted(entries: &Rc<Entries>, note: &str) -> Rc<Entries> {
    Rc::new(Entries { note: note.to_owned(), ..Entries::clone(entries) })
}

#[test]
fn a_drag_on_a_bench_is_one_step_however_it_ends() {
    let start = State::example();
    let to = |note: &str, phase| Action::Draw(noted(&start.entries, note), phase);
    let whole = [to("a", Phase::Begin), to("b", Phase::Move), to("c", Phase::Move), to("d", Phase::End)];
    let state = after(start.clone(), whole.clone());
    assert_eq!((state.entries.note.as_str(), state.is_dragging()), ("d", false));
    assert_eq!(state.reduce(Action::Undo).entries, start.entries);
    // The end is lost: undoing ends it first.
    let state = after(start.clone(), whole[..3].to_vec());
    assert!(state.is_dragging());
    let state = state.reduce(Action::Undo);
    assert_eq!((&state.entries, state.is_dragging()), (&start.entries, false));
    assert_eq!(state.reduce(Action::Redo).entries.note, "c");
    // Back to where it was: nothing to undo.
    let back = Action::Draw(Rc::clone(&start.entries), Phase::End);
    let state = after(start.clone(), [to("a", Phase::Begin), back]);
    assert_eq!(state, Rc::new(start));
}

#[test]
fn what_is_set_is_one_step_to_undo() {
    let start = State::example();
    let state = after(start.clone(), [Action::Set(noted(&start.entries, "set"))]);
    assert_eq!(state.entries.note, "set");
    assert_eq!(state.reduce(Action::Undo).entries, start.entries);
}

#[test]
fn a_bench_shows_while_the_shape_is_given_that_way() {
    let bench = || Action::Bench(Some(Bench::Parts));
    let give = |how| Action::Choose(Choice::GivenAs(how));
    assert_eq!(after(State::example(), [bench()]).bench(), None);
    let state = after(State::example(), [give(GivenAs::Parts), bench()]);
    assert_eq!(state.bench(), Some(Bench::Parts));
    let undone = Rc::clone(&state).reduce(Action::Undo);
    assert_eq!(undone.bench(), None, "a block again");
    assert_eq!(Rc::clone(&state).reduce(give(GivenAs::Block)).bench, None);
    assert_eq!(state.reduce(Action::Replace(Rc::new(Entries::blank()), None)).bench, None);
}

#[test]
fn supports_that_are_taken_away_keep_their_texts() {
    let choose = |n| Action::Choose(Choice::Supports(n));
    let third = Place::in_row(Field::WeighReading, 2);
    let typed = Action::Type(third, "212".to_owned());
    let state = after(State::example(), [choose(3), typed, choose(2)]);
    assert_eq!(state.entries.document().0.load.weighing.map(|w| w.points.len()), Some(2));
    let state = state.reduce(choose(3));
    assert_eq!(third.get(&state.entries.document().0), Some(212.0));
}

#[test]
fn a_tolerance_put_right_stays_open_and_its_letters_are_one_step() {
    let place = Place::from(Field::Tread);
    let start = Rc::new(State::example());
    let mut state = Rc::clone(&start);
    for text in ["-", "2", "25"] {
        state = state.reduce(Action::Tolerance(place, text.to_owned()));
        assert_eq!(state.known, Some(place));
    }
    state = state.reduce(Action::Settle).reduce(Action::Choose(Choice::KnownBy(place, By::Tape)));
    assert!(state.entries.own_tolerance(place).is_none());
    state = state.reduce(Action::Undo);
    assert_eq!(state.entries.tolerance_shown(place, System::Metric), "25");
    state = state.reduce(Action::Undo);
    assert_eq!(state.entries, start.entries);
}

#[test]
fn one_is_open_at_a_time_and_none_on_another_card() {
    let (tread, mass) = (Place::from(Field::Tread), Place::in_row(Field::StageMass, 1));
    let open = |place| Rc::new(State::example()).reduce(Action::Known(Some(place)));
    assert_eq!(open(tread).reduce(Action::Known(Some(mass))).known, Some(mass));
    assert_eq!(open(tread).reduce(Action::Open(Some(Card::Move))).known, None);
    let removed = open(mass).reduce(Action::RemoveStage(0));
    assert_eq!((removed.known, removed.entries.stages), (None, 1));
}

#[test]
fn what_replaces_the_check_shows_it() {
    let state = after(State::example(), [Action::Go(Screen::Trucks)]);
    assert_eq!(state.place, Screen::Trucks);
    assert_eq!(state.reduce(Action::Replace(Rc::new(Entries::blank()), None)).place, Screen::Check);
}
