use super::*;
use crate::store::shelf::tests::truck;
use standfast_core::book::SetUp;

fn slot(record: Record, revision: u64) -> Slot {
    Slot { record: Rc::new(record), order: 1, revision }
}

fn wish(was: Option<Record>, to: Option<Record>, base: u64) -> Wished {
    let change = Change { key: Key::truck("a"), was: was.map(Rc::new), to: to.map(Rc::new), order: 1 };
    Wished { change, base }
}

fn settled(wishes: &[Wished], there: Present) -> Settled {
    let mut count = 0;
    let mut outside = Outside {
        called: &|name| format!("{name} (this tab)"),
        fresh: &mut || {
            count += 1;
            format!("new{count}")
        },
    };
    settle(wishes, &[(Key::truck("a"), there)].into(), 7, &mut outside)
}

fn written(settled: &Settled) -> Vec<(String, Option<String>)> {
    settled.write.iter().map(|(k, s)| (k.to_string(), s.as_ref().map(|s| s.record.name()))).collect()
}

fn to(key: &str, name: &str) -> (String, Option<String>) {
    (key.to_owned(), Some(name.to_owned()))
}

#[test]
fn what_is_based_on_the_present_is_written_with_the_next_revision() {
    let change = wish(Some(truck("a", "Blue")), Some(truck("a", "Red")), 5);
    let done = settled(&[change], Present::Entry(slot(truck("a", "Blue"), 5)));
    assert_eq!((written(&done), done.clock, done.met.len()), (vec![to("truck/a", "Red")], 8, 0));
    assert_eq!(done.now[&Key::truck("a")].as_ref().map(|s| s.revision), Some(8));
    let gone = settled(&[wish(None, None, 5)], Present::Entry(slot(truck("a", "Blue"), 5)));
    assert_eq!(written(&gone), [("truck/a".to_owned(), None)]);
}

#[test]
fn two_changes_of_the_same_thing_are_both_kept() {
    let change = wish(Some(truck("a", "Blue")), Some(truck("a", "Ours")), 5);
    let done = settled(&[change], Present::Entry(slot(truck("a", "Theirs"), 6)));
    assert_eq!(written(&done), [to("truck/new1", "Ours (this tab)")]);
    assert_eq!(done.now[&Key::truck("a")].as_ref().map(|s| s.record.name()), Some("Theirs".to_owned()));
    let met = Met::BothKept { name: "Ours".to_owned(), ours: "Ours (this tab)".to_owned() };
    assert_eq!(done.met, [met]);
}

#[test]
fn the_same_change_made_twice_is_one() {
    let change = wish(Some(truck("a", "Blue")), Some(truck("a", "Red")), 5);
    let done = settled(&[change], Present::Entry(slot(truck("a", "Red"), 6)));
    assert_eq!((written(&done), done.met.len()), (vec![], 0));
}

#[test]
fn set_ups_added_in_two_tabs_are_joined() {
    let with = |ids: &[&str]| {
        let Record::Truck(mut truck) = truck("a", "Blue") else { panic!("a truck") };
        truck.set_ups = ids.iter().map(|id| SetUp { id: (*id).to_owned(), ..SetUp::default() }).collect();
        Record::from(truck)
    };
    let change = wish(Some(with(&["x"])), Some(with(&["x", "ours"])), 5);
    let done = settled(&[change], Present::Entry(slot(with(&["x", "theirs"]), 6)));
    assert_eq!(done.write[0].1.as_ref().map(|s| Record::clone(&s.record)), Some(with(&["x", "theirs", "ours"])));
    assert_eq!(done.met, [Met::Joined { name: "Blue".to_owned() }]);
}

#[test]
fn what_was_changed_meanwhile_is_not_removed_and_what_was_removed_is_put_back() {
    let done = settled(&[wish(None, None, 5)], Present::Entry(slot(truck("a", "Theirs"), 6)));
    assert_eq!((written(&done), &done.met), (vec![], &vec![Met::NotRemoved { name: "Theirs".to_owned() }]));
    let change = wish(Some(truck("a", "Blue")), Some(truck("a", "Ours")), 5);
    let done = settled(&[change], Present::Nothing);
    assert_eq!(written(&done), [to("truck/a", "Ours")]);
    assert_eq!(done.met, [Met::PutBack { name: "Ours".to_owned() }]);
}

#[test]
fn what_cannot_be_read_is_never_written_over() {
    let change = wish(None, Some(truck("a", "Ours")), 0);
    assert_eq!(written(&settled(&[change], Present::Damaged)), [to("truck/new1", "Ours (this tab)")]);
    assert_eq!(written(&settled(&[wish(None, None, 3)], Present::Damaged)), []);
}

/// Whatever two tabs do to one entry, in whatever order it is settled: each content that somebody made
/// is there afterwards, or was replaced by whoever had seen it.
#[test]
fn no_content_is_lost_whatever_meets() {
    let versions = [None, Some(truck("a", "Blue")), Some(truck("a", "Red"))];
    for theirs in &versions {
        for ours in &versions {
            for base in [0, 5] {
                let there = theirs.clone().map_or(Present::Nothing, |r| Present::Entry(slot(r, 6)));
                let done = settled(&[wish(Some(truck("a", "Old")), ours.clone(), base)], there);
                let mut names: Vec<_> = done.now.values().flatten().map(|s| s.record.name()).collect();
                names.iter_mut().for_each(|n| *n = n.replace(" (this tab)", ""));
                for content in [theirs, ours].into_iter().flatten() {
                    assert!(names.contains(&content.name()), "{theirs:?} {ours:?} {base}");
                }
            }
        }
    }
}
