//! How large the result is, as it lies there and as a server would send it.

use std::io::Write;
use std::path::Path;

use flate2::{Compression, write::GzEncoder};

use crate::failure::{Failure, Outcome};
use crate::files;

/// Prints the size of every file in the folder, but not of those in folders below.
///
/// # Errors
/// When a file cannot be read.
pub fn print(folder: &Path) -> Outcome<()> {
    println!("{:>12} {:>12}  file", "bytes", "gzip");
    for path in files::entries(folder)? {
        if path.is_file() {
            let content = files::read(&path)?;
            let name = path.file_name().unwrap_or_default().display();
            println!("{:>12} {:>12}  {name}", grouped(content.len()), grouped(gzipped(&content)?));
        }
    }
    Ok(())
}

fn gzipped(content: &[u8]) -> Outcome<usize> {
    let mut encoder = GzEncoder::new(Vec::new(), Compression::best());
    let packed = encoder.write_all(content).and_then(|()| encoder.finish());
    packed.map(|bytes| bytes.len()).map_err(|e| Failure::new(format!("cannot compress: {e}")))
}

/// A number with its digits in groups of three.
fn grouped(number: usize) -> String {
    let digits = number.to_string();
    let mut text = String::new();
    for (place, digit) in digits.chars().enumerate() {
        if place > 0 && (digits.len() - place).is_multiple_of(3) {
            text.push(' ');
        }
        text.push(digit);
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn digits_are_grouped_from_the_right() {
        for (number, text) in [(0, "0"), (999, "999"), (1000, "1 000"), (1_234_567, "1 234 567")] {
            assert_eq!(grouped(number), text);
        }
    }

    #[test]
    fn repetition_packs_well() {
        assert!(gzipped(&[7; 10_000]).is_ok_and(|size| size < 100));
    }
}
