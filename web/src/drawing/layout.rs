//! Room for words: how wide a text is, and labels in a row or column that do not overlap.

/// A rectangle on the sheet.
#[cfg(test)]
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Room {
    /// Left edge.
    pub left: f64,
    /// Top edge.
    pub top: f64,
    /// Right edge.
    pub right: f64,
    /// Bottom edge.
    pub bottom: f64,
}

#[cfg(test)]
impl Room {
    /// Whether two rectangles share more than an edge.
    pub fn overlaps(&self, other: &Self) -> bool {
        self.left < other.right && other.left < self.right && self.top < other.bottom && other.top < self.bottom
    }
}

/// About how wide a text is, on the generous side: as in the widest of the plain sans-serif faces
/// that a device may fall back on.
pub fn width(text: &str, size: f64) -> f64 {
    let ems: f64 = text
        .chars()
        .map(|c| match c {
            ' ' | '\u{202f}' | '.' | ',' | ':' | 'i' | 'j' | 'l' | 'f' | 't' | 'r' | '\u{b7}' => 0.38,
            'm' | 'w' | '%' | 'M' | 'W' => 0.98,
            c if c.is_uppercase() => 0.72,
            _ => 0.62,
        })
        .sum();
    ems * size
}

/// The same in bold.
pub fn bold_width(text: &str, size: f64) -> f64 {
    1.12 * width(text, size)
}

/// One thing along a line: where its middle would best be, and how much room it needs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Want {
    /// The middle, if there were nothing else.
    pub at: f64,
    /// Its extent.
    pub extent: f64,
}

/// Puts things along a line between `lo` and `hi` so that none overlaps another, each as near its
/// wish as the order of the wishes allows. Returns the middles in the order given. Where there is
/// not room for all, they run out beyond `hi` rather than over each other.
pub fn spread(wants: &[Want], lo: f64, hi: f64) -> Vec<f64> {
    let mut order: Vec<usize> = (0..wants.len()).collect();
    order.sort_by(|&a, &b| wants[a].at.total_cmp(&wants[b].at));
    let mut middles: Vec<f64> = wants.iter().map(|w| w.at).collect();
    let mut limit = hi;
    for &k in order.iter().rev() {
        let half = 0.5 * wants[k].extent;
        middles[k] = middles[k].min(limit - half);
        limit = middles[k] - half;
    }
    let mut limit = lo;
    for &k in &order {
        let half = 0.5 * wants[k].extent;
        middles[k] = middles[k].max(limit + half);
        limit = middles[k] + half;
    }
    middles
}

#[cfg(test)]
mod tests {
    use super::*;

    fn want(at: f64, extent: f64) -> Want {
        Want { at, extent }
    }

    fn apart(wants: &[Want], middles: &[f64]) -> bool {
        (0..wants.len()).all(|a| {
            (0..a).all(|b| (middles[a] - middles[b]).abs() >= 0.5 * (wants[a].extent + wants[b].extent) - 1e-9)
        })
    }

    #[test]
    fn what_has_room_stays_where_it_wants_to_be() {
        assert_eq!(spread(&[want(30.0, 20.0), want(80.0, 20.0)], 0.0, 100.0), [30.0, 80.0]);
        assert!(spread(&[], 0.0, 100.0).is_empty());
    }

    #[test]
    fn crowds_are_parted_within_the_line_and_keep_their_order() {
        for at in [-50.0, 0.0, 49.0, 50.0, 130.0] {
            let wants = [want(at + 1.0, 30.0), want(at, 20.0), want(at + 2.0, 40.0)];
            let middles = spread(&wants, 0.0, 100.0);
            assert!(apart(&wants, &middles), "{middles:?}");
            assert!(middles[1] < middles[0] && middles[0] < middles[2]);
            for (w, m) in wants.iter().zip(&middles) {
                assert!(m - 0.5 * w.extent >= -1e-9 && m + 0.5 * w.extent <= 100.0 + 1e-9, "{middles:?}");
            }
        }
    }

    #[test]
    fn too_many_run_on_but_never_over_each_other() {
        let wants = [want(5.0, 60.0), want(5.0, 60.0), want(5.0, 60.0)];
        let middles = spread(&wants, 0.0, 100.0);
        assert!(apart(&wants, &middles));
        assert!(middles.iter().all(|m| *m >= 30.0));
    }

    #[test]
    fn longer_texts_are_wider() {
        assert!(width("318 mm in hand", 20.0) > width("318 mm", 20.0));
        assert!((width("88", 20.0) / width("88", 10.0) - 2.0).abs() < 1e-12);
    }
}
