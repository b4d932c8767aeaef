//! Shared pieces of the checks from outside.
