//! Assesses saved checks and prints whole reports as JSON.
//!
//! `assess FILE` prints one report, indented. `assess --lines` reads one document a line from
//! standard input and answers one report a line. A file that cannot be read gives an object with
//! `refused` in place of a report; with a single file the exit code is then 1.

use standfast_core::document::{Document, FileError};
use standfast_core::report::{Report, assess};
use std::io::{BufRead, BufWriter, Write};
use std::process::ExitCode;

#[derive(serde::Serialize)]
#[serde(untagged)]
enum Answer {
    Report(Box<Report>),
    Refused { refused: FileError },
}

fn answer(text: &str) -> Answer {
    match Document::from_json(text) {
        Ok(document) => Answer::Report(Box::new(assess(&document))),
        Err(refused) => Answer::Refused { refused },
    }
}

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let result = match arguments.as_slice() {
        [flag] if flag == "--lines" => lines(),
        [file] if !file.starts_with('-') => one(file),
        _ => {
            eprintln!("usage: assess FILE | assess --lines");
            return ExitCode::from(2);
        }
    };
    result.unwrap_or_else(|error| {
        eprintln!("{error}");
        ExitCode::from(2)
    })
}

fn one(file: &str) -> std::io::Result<ExitCode> {
    let text = std::fs::read_to_string(file)?;
    let answer = answer(&text);
    println!("{}", serde_json::to_string_pretty(&answer)?);
    Ok(if matches!(answer, Answer::Refused { .. }) { ExitCode::FAILURE } else { ExitCode::SUCCESS })
}

fn lines() -> std::io::Result<ExitCode> {
    let mut out = BufWriter::new(std::io::stdout().lock());
    for line in std::io::stdin().lock().lines() {
        let line = line?;
        if !line.trim().is_empty() {
            serde_json::to_writer(&mut out, &answer(&line))?;
            writeln!(out)?;
        }
    }
    out.flush()?;
    Ok(ExitCode::SUCCESS)
}
