//! A value shared between components and told apart by where it lies, not by what it holds.

use std::ops::Deref;
use std::rc::Rc;

/// Equal only where it is the very same value: comparing costs nothing, whatever it holds.
#[derive(Debug)]
pub struct Shared<T>(Rc<T>);

impl<T> From<Rc<T>> for Shared<T> {
    fn from(value: Rc<T>) -> Self {
        Self(value)
    }
}

impl<T> Shared<T> {
    /// The value, to hold on to.
    pub fn rc(&self) -> Rc<T> {
        Rc::clone(&self.0)
    }
}

impl<T> Clone for Shared<T> {
    fn clone(&self) -> Self {
        Self(Rc::clone(&self.0))
    }
}

impl<T> PartialEq for Shared<T> {
    fn eq(&self, other: &Self) -> bool {
        Rc::ptr_eq(&self.0, &other.0)
    }
}

impl<T> Deref for Shared<T> {
    type Target = T;
    fn deref(&self) -> &T {
        &self.0
    }
}
