//! Load stability of counterbalanced fork-lift trucks.
