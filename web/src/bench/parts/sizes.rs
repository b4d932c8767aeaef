//! Which of a shape's figures is its size along each direction, and which ways it can point.

use super::view::View;
use standfast_core::document::{Facing, Shape};
use standfast_core::place::Field;

/// What a part's box measures along one direction.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Measure {
    /// A figure of its own.
    Figure(Field),
    /// Half of a figure: the height of half a sphere.
    Half(Field),
    /// The outline's own size along its first or second direction.
    Outline(usize),
}

/// The direction that a way lies along.
pub const fn axis_of(facing: Facing) -> usize {
    match facing {
        Facing::Ahead | Facing::Heel => 0,
        Facing::Left | Facing::Right => 1,
        Facing::Up | Facing::Down => 2,
    }
}

/// The view that looks along a way: there an outline is drawn.
pub const fn view_along(facing: Facing) -> View {
    match axis_of(facing) {
        0 => View::Front,
        1 => View::Side,
        _ => View::Plan,
    }
}

/// The ways a shape can point, one of each that makes a difference.
pub const fn ways(shape: Shape) -> &'static [Facing] {
    match shape {
        Shape::Box | Shape::Sphere => &[],
        Shape::Cylinder | Shape::Tube | Shape::Prism => &[Facing::Up, Facing::Ahead, Facing::Left],
        Shape::Cone | Shape::HalfSphere => &Facing::ALL,
        Shape::Wedge => &[Facing::Heel, Facing::Ahead, Facing::Left, Facing::Right],
    }
}

/// The way of [`ways`] that looks like this one.
pub fn like(shape: Shape, facing: Facing) -> Facing {
    let ways = ways(shape);
    let same = |w: &&Facing| **w == facing;
    let along = |w: &&Facing| axis_of(**w) == axis_of(facing);
    ways.iter().find(same).or_else(|| ways.iter().find(along)).or(ways.first()).copied().unwrap_or(facing)
}

/// What a part measures along a direction.
pub fn measure(shape: Shape, facing: Facing, axis: usize) -> Measure {
    let along = axis_of(facing) == axis;
    match shape {
        Shape::Box | Shape::Wedge => {
            Measure::Figure([Field::PartLength, Field::PartWidth, Field::PartHeight][axis.min(2)])
        }
        Shape::Sphere => Measure::Figure(Field::PartDiameter),
        Shape::HalfSphere if along => Measure::Half(Field::PartDiameter),
        Shape::HalfSphere => Measure::Figure(Field::PartDiameter),
        Shape::Cylinder | Shape::Tube | Shape::Cone | Shape::Prism if along => Measure::Figure(Field::PartLength),
        Shape::Cylinder | Shape::Tube | Shape::Cone => Measure::Figure(Field::PartDiameter),
        Shape::Prism => Measure::Outline(usize::from(view_along(facing).axes().0 != axis)),
    }
}

#[cfg(test)]
pub mod tests {
    use super::*;
    use crate::entries::dimensions;

    #[test]
    fn what_is_measured_is_asked_for() {
        for shape in Shape::ALL {
            for facing in Facing::ALL {
                for axis in 0..3 {
                    match measure(shape, facing, axis) {
                        Measure::Figure(field) | Measure::Half(field) => {
                            assert!(dimensions(shape).contains(&field), "{shape:?} {facing:?} {axis}");
                        }
                        Measure::Outline(k) => assert!(shape == Shape::Prism && k < 2),
                    }
                }
            }
        }
    }

    #[test]
    fn an_outline_lies_in_the_view_along_its_axis() {
        assert_eq!(measure(Shape::Prism, Facing::Up, 2), Measure::Figure(Field::PartLength));
        assert_eq!(measure(Shape::Prism, Facing::Up, 0), Measure::Outline(0));
        assert_eq!(measure(Shape::Prism, Facing::Up, 1), Measure::Outline(1));
        assert_eq!(measure(Shape::Prism, Facing::Left, 0), Measure::Outline(0));
        assert_eq!(measure(Shape::Prism, Facing::Left, 2), Measure::Outline(1));
        assert_eq!(measure(Shape::Prism, Facing::Heel, 1), Measure::Outline(0));
        assert_eq!(measure(Shape::Prism, Facing::Heel, 2), Measure::Outline(1));
    }

    #[test]
    fn a_wedge_never_points_up_and_ways_that_look_alike_are_one() {
        assert_eq!(like(Shape::Wedge, Facing::Up), Facing::Heel);
        assert_eq!(like(Shape::Cylinder, Facing::Down), Facing::Up);
        assert_eq!(like(Shape::Cylinder, Facing::Right), Facing::Left);
        assert_eq!(like(Shape::Cone, Facing::Down), Facing::Down);
        assert_eq!(like(Shape::Box, Facing::Down), Facing::Down);
    }
}
