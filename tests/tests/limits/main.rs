//! Solved limits and what would have to change, entered and assessed again over thousands of random cases.

mod entered;
mod inside;
mod remedies;
mod roots;
