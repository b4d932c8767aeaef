use super::*;
use crate::example;
use crate::verdict::State;

fn all(text: &str, mut each: impl FnMut(&Document, &Scenario, &Balance, &Whole, &Limits)) {
    let document = example::document(text);
    let scenario = Scenario::from_document(&document).expect("an example");
    let balance = Balance::of(&scenario.truck, &scenario.doubts);
    let whole = Whole::of(&scenario, &balance);
    each(&document, &scenario, &balance, &whole, &find(&scenario, &balance, &whole, &document));
}

#[test]
fn just_inside_goes_and_just_outside_does_not() {
    for text in [example::THREE_WHEEL, example::FOUR_WHEEL, example::ODD_LOAD] {
        all(text, |document, scenario, balance, whole, limits| {
            println!("{:?}", whole.verdict.state);
            for solved in &limits.whole {
                println!("{solved:?}");
                let axis = Axis::of(solved.what, scenario, document);
                let at = |value: f64| {
                    let mut scenario = scenario.clone();
                    axis.set(value, &mut scenario);
                    Whole::of(&scenario, balance).verdict.state
                };
                if let Reach::At { value, .. } = solved.reach {
                    assert_eq!(at(value.get()), State::Go, "{solved:?}");
                    let beyond = value.get() + 1e-8 * (axis.to - axis.from);
                    assert_ne!(at(beyond), State::Go, "{solved:?}");
                }
            }
        });
    }
}
