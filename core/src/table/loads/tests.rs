use super::*;
use crate::example;

const HEAD: &str = "name,weight kg,length mm,width mm,height mm,centre from heel mm,centre left mm,centre above mm\n";

#[test]
fn blocks_come_back_as_they_were() {
    let mut marked = example::document(example::THREE_WHEEL).load;
    (marked.turned, marked.underside) = Default::default();
    (marked.centre_known, marked.name) = (Some(CentreKnown::Mark), "=Kiln; \"door\"\n-1".to_owned());
    (marked.cg_from_heel_m, marked.cg_left_m, marked.cg_above_m) = (Some(0.55), Some(-0.025), Some(0.4));
    let middle = Load {
        name: "Drums".to_owned(),
        mass_kg: Some(640.125),
        weight_known: Some(WeightKnown::Estimate),
        length_m: Some(1.2),
        width_m: Some(0.8),
        height_m: Some(0.95),
        centre_known: Some(CentreKnown::Middle),
        ..Load::default()
    };
    let loads = [marked, middle];
    assert!(loads.iter().all(is_one_block));
    let table = csv_of_loads(&loads, System::Metric);
    assert!(table.contains("-0.025"), "a figure below zero stays one: {table}");
    assert_eq!(loads_from_csv(&table), Ok(loads.to_vec()));
    assert!(!is_one_block(&example::document(example::ODD_LOAD).load));
}

#[test]
fn a_centre_is_whole_or_not_there() {
    let loads =
        loads_from_csv(&format!("{HEAD}A,640,1200,800,950,550,-25,400\nB,640,1200,800,950,,,\n")).expect("read");
    assert_eq!((loads[0].centre_known, loads[0].cg_left_m), (Some(CentreKnown::Mark), Some(-0.025)));
    assert_eq!((loads[1].centre_known, loads[1].cg_left_m), (Some(CentreKnown::Middle), None));
    let wrongs = loads_from_csv(&format!("{HEAD}A,640,1200,800,950,550,,400\n")).expect_err("one is missing");
    let column = wrongs[0].column.as_ref().map(|c| (c.letters.as_str(), c.name.as_str()));
    assert_eq!((wrongs.len(), wrongs[0].row, column), (1, 2, Some(("G", "centre left mm"))));
    assert!(matches!(wrongs[0].fault, Fault::Together { .. }));
}

#[test]
fn rows_with_something_missing_take_the_whole_table_with_them() {
    let wrongs = loads_from_csv(&format!("{HEAD}A,640,1200,800,950,,,\n,640,1200,,0,,,\n")).expect_err("missing");
    let said: Vec<_> = wrongs.iter().map(|w| (w.row, w.column.as_ref().map_or("", |c| &c.letters))).collect();
    assert_eq!(said, [(3, "A"), (3, "D"), (3, "E")]);
    let wrongs = loads_from_csv("name,weight kg,length mm,width mm,height mm,weight known by\nA,1,80,80,80,guess\n");
    let fault = Fault::OtherWord { text: "guess".to_owned(), words: WAYS };
    assert_eq!(wrongs.expect_err("no such word")[0].fault, fault);
}
