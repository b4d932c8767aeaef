//! Damaged tables: never a panic, never part of one, never a figure that another reader does not see there.

use csv::ReaderBuilder;
use standfast_core::table::{Wrong, csv_of_trucks, loads_from_csv, plates_from_csv};
use standfast_core::units::System;
use standfast_core::{book, example};
use standfast_tests::draw::Draws;

const LOADS: &str = "name;weight kg;length mm;width mm;height mm;centre from heel mm;centre left mm;centre above mm\r\n\
    \"Kiln door; \"\"invented\"\"\";1 240,5;1200;800;1400;600;-25;700\r\n\
    Glaze drums;640;1200;800;950;;;\r\n\
    \r\n\
    \"Two\r\nlines\";320,25;1000;600;500;;;\r\n";
const PIECES: [&str; 16] =
    ["\"", ",", ";", "\t", "\r", "\n", "\0", "=", "-", "9", "1,580", "\u{feff}", "\u{fffd}", "NaN", "1e999", "\u{661}"];

fn plates() -> String {
    let set_up = |text| book::SetUp { truck: example::document(text).truck, ..book::SetUp::default() };
    let set_ups = vec![set_up(example::THREE_WHEEL)];
    let other = vec![set_up(example::FOUR_WHEEL)];
    let record = |name: &str, set_ups| book::TruckRecord { name: name.to_owned(), set_ups, ..Default::default() };
    let trucks = vec![record("One", set_ups), record("=Two", other)];
    csv_of_trucks(&book::Book { trucks, ..book::Book::default() }, System::Metric)
}

/// The text with one to four things done to its bytes.
fn mutated(text: &str, draws: &mut Draws) -> String {
    let mut bytes = text.as_bytes().to_vec();
    for _ in 0..draws.count(1..5) {
        let at = draws.count(0..bytes.len().max(1)).min(bytes.len().saturating_sub(1));
        match draws.count(0..6) {
            0 => bytes.truncate(at),
            1 if !bytes.is_empty() => drop(bytes.remove(at)),
            2 if !bytes.is_empty() => bytes[at] ^= 1 << draws.count(0..8).min(7),
            3 => {
                let end = (at + draws.count(1..40)).min(bytes.len());
                let part = bytes[at.min(end)..end].to_vec();
                bytes.splice(at..at, part);
            }
            4 if !bytes.is_empty() => bytes[at] = (256.0 * draws.unit()) as u8,
            _ => {
                let piece = draws.one_of(&PIECES).unwrap_or_default();
                bytes.splice(at..at, piece.bytes());
            }
        }
    }
    String::from_utf8_lossy(&bytes).into_owned()
}

/// All that is said has a row of the text, and a column by letters.
fn assert_placed(text: &str, wrongs: &[Wrong]) {
    let lines = text.matches(['\r', '\n']).count() + 1;
    assert!(!wrongs.is_empty() && wrongs.len() <= 100);
    for wrong in wrongs {
        assert!((1..=lines).contains(&wrong.row), "{wrong:?}\n{text}");
        assert!(wrong.column.as_ref().is_none_or(|c| !c.letters.is_empty()), "{wrong:?}");
    }
}

/// The names of the loads as another reader sees them with one of the separators.
fn seen_by_another(text: &str, names: &[String]) -> bool {
    b",;\t".iter().any(|separator| {
        let mut reader =
            ReaderBuilder::new().delimiter(*separator).flexible(true).has_headers(false).from_reader(text.as_bytes());
        let rows: Vec<_> =
            reader.records().map_while(Result::ok).filter(|r| r.iter().any(|c| !c.trim().is_empty())).collect();
        let seen = rows.iter().skip(1).map(|r| r.iter().map(str::to_owned).collect::<Vec<_>>());
        seen.clone().count() == names.len() && seen.zip(names).all(|(cells, name)| cells.contains(name))
    })
}

#[test]
fn a_hundred_thousand_damaged_tables() {
    let plates = plates();
    let (mut taken, mut refused) = (0, 0);
    for seed in 0..50_000 {
        let mut draws = Draws::seeded_row(seed, 64);
        let text = mutated(LOADS, &mut draws);
        match loads_from_csv(&text) {
            Ok(loads) => {
                taken += 1;
                let names: Vec<_> = loads.iter().map(|l| l.name.clone()).collect();
                assert!(seen_by_another(&text, &names), "{names:?}\n{text}");
                for load in &loads {
                    let figures = [load.mass_kg, load.length_m, load.width_m, load.height_m];
                    assert!(figures.iter().all(|f| f.is_some_and(|f| f.is_finite() && f > 0.0)), "{load:?}");
                    let centre = [load.cg_from_heel_m, load.cg_left_m, load.cg_above_m].map(|c| c.is_some());
                    assert!(centre == [true; 3] || centre == [false; 3], "{load:?}");
                }
            }
            Err(wrongs) => {
                refused += 1;
                assert_placed(&text, &wrongs);
            }
        }
        let text = mutated(&plates, &mut draws);
        match plates_from_csv(&text) {
            Ok(read) => {
                taken += 1;
                let rows = read.iter().flat_map(|p| &p.plate.rows);
                for row in rows {
                    let figures = [row.height_m, row.load_centre_m, row.capacity_kg];
                    assert!(figures.iter().all(|f| f.is_some_and(|f| f.is_finite() && f > 0.0)), "{row:?}");
                }
            }
            Err(wrongs) => {
                refused += 1;
                assert_placed(&text, &wrongs);
            }
        }
    }
    println!("damaged tables: {taken} taken, {refused} refused");
    assert!(taken > 5000 && refused > 50_000, "{taken} {refused}");
}

#[test]
fn random_bytes_are_no_table() {
    for seed in 0..5000 {
        let mut draws = Draws::seeded_row(seed, 300);
        let bytes: Vec<u8> = (0..draws.count(0..280)).map(|_| (256.0 * draws.unit()) as u8).collect();
        let text = String::from_utf8_lossy(&bytes);
        assert!(loads_from_csv(&text).is_err() && plates_from_csv(&text).is_err(), "{text}");
    }
}

/// Cut off anywhere: refused, or the rows that are there. Only a figure that ends the text may be short of digits:
/// a table may end without a line end.
#[test]
fn cut_off_at_every_byte() {
    let whole = loads_from_csv(LOADS).expect("whole");
    assert_eq!(whole.len(), 3);
    for end in (0..LOADS.len()).filter(|end| LOADS.is_char_boundary(*end)) {
        match loads_from_csv(&LOADS[..end]) {
            Ok(mut loads) => {
                let n = loads.len();
                if let Some(last) = loads.last_mut().filter(|_| !LOADS[..end].ends_with(['\r', '\n', ';'])) {
                    last.cg_above_m = whole[n - 1].cg_above_m;
                }
                assert_eq!(loads, whole[..n], "cut at {end}");
            }
            Err(wrongs) => assert_placed(&LOADS[..end], &wrongs),
        }
    }
}

#[test]
fn fifty_megabytes_are_refused_at_once() {
    let begun = std::time::Instant::now();
    for text in ["\"".repeat(50_000_000), "x,".repeat(25_000_000), LOADS.repeat(100_000)] {
        let wrongs = loads_from_csv(&text).expect_err("too large");
        assert_eq!((wrongs.len(), wrongs[0].row), (1, 1));
    }
    assert!(begun.elapsed().as_secs() < 5);
    // The largest that are looked at.
    for text in ["\"".repeat(1_999_999), "\n".repeat(2_000_000), "x,".repeat(999_999)] {
        assert!(loads_from_csv(&text).is_err() && plates_from_csv(&text).is_err());
    }
    assert!(begun.elapsed().as_secs() < 20);
}
