//! Several ways of finding one load.
