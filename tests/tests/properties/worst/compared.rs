//! What was found beside what the core says.

/// The core's worst beside the worst of all corners.
#[derive(Debug, Default)]
pub struct Compared {
    pairs: usize,
    met: usize,
    /// What is stated is worse than all that the plate leaves possible.
    stated: usize,
    beaten: Vec<String>,
    /// The most that the core is more cautious, and where.
    cautious: (f64, String),
}

impl Compared {
    /// The least of all corners beside the worst, within what may be lost in adding up.
    pub fn add(&mut self, there: impl Fn() -> String, corner: f64, worst: f64, nominal: f64, tie: f64) {
        self.pairs += 1;
        if corner < worst - tie {
            self.beaten.push(format!("{}: {corner} under {worst}, {:.1} ties", there(), (worst - corner) / tie));
        } else if corner <= worst + tie {
            self.met += 1;
        } else if nominal - worst <= tie {
            self.stated += 1;
        } else if corner - worst > self.cautious.0 {
            self.cautious = (corner - worst, there());
        }
    }

    /// Says what was found; at least this part has to be met just so.
    pub fn report(&self, what: &str, just_so: f64) {
        let Self { pairs, met, stated, beaten, cautious } = self;
        println!(
            "{what}: {met} of {pairs} are the worst corner just so, {stated} what is stated; most cautious {cautious:?}"
        );
        assert!(beaten.is_empty(), "{} beaten: {:#?}", beaten.len(), &beaten[..beaten.len().min(5)]);
        assert!((met + stated) as f64 >= just_so * *pairs as f64, "{met} of {pairs}");
    }
}
