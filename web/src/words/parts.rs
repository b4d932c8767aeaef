//! The texts of the bench on which a load is built from parts.

use crate::words::Count;
use standfast_core::document::{Facing, Shape};

/// The texts.
#[derive(Debug)]
pub struct PartsWords {
    pub heading: &'static str,
    pub back: &'static str,
    // The views.
    pub views: &'static str,
    pub which_view: &'static str,
    pub all: &'static str,
    pub side: &'static str,
    pub front: &'static str,
    pub plan: &'static str,
    pub side_caption: &'static str,
    pub front_caption: &'static str,
    pub plan_caption: &'static str,
    pub about: &'static str,
    pub count: Count,
    pub truck: &'static str,
    pub grid: &'static str,
    pub move_part: &'static str,
    pub move_side: &'static str,
    /// The two sides in each direction, the near, right or under one first.
    pub sides: [[&'static str; 2]; 3],
    pub at: &'static str,
    pub how: &'static str,
    // The list.
    pub list: &'static str,
    pub none_yet: &'static str,
    pub weight_open: &'static str,
    pub takes_away: &'static str,
    pub to_do: Count,
    pub cut_of: &'static str,
    pub numbered: &'static str,
    // The whole.
    pub total: &'static str,
    pub total_open: &'static str,
    pub weight: &'static str,
    pub centre: &'static str,
    pub from_heel_side: &'static str,
    pub left_of_middle: &'static str,
    pub above_underside: &'static str,
    // The centre in short.
    pub short_ahead: &'static str,
    pub short_left: &'static str,
    pub short_right: &'static str,
    pub short_above: &'static str,
    pub size: &'static str,
    pub with_range: &'static str,
    // Putting in.
    pub add: &'static str,
    pub add_shape: &'static str,
    pub add_pallet: &'static str,
    pub pallet_source: &'static str,
    pub pallet_to_confirm: &'static str,
    pub bearer: &'static str,
    pub full: &'static str,
    // The part selected.
    pub part: &'static str,
    pub name: &'static str,
    pub copy: &'static str,
    pub remove: &'static str,
    pub form: &'static str,
    pub way: &'static str,
    pub sizes: &'static str,
    pub place: &'static str,
    pub place_help: &'static str,
    pub weighs: &'static str,
    pub cut_weighs: &'static str,
    pub material: &'static str,
    pub no_material: &'static str,
    pub weight_counts: &'static str,
    pub density: &'static str,
    pub cut_from: &'static str,
    pub solid: &'static str,
    pub host_has_cuts: &'static str,
    // The outline.
    pub draw_outline: &'static str,
    pub outline: &'static str,
    pub outline_how: &'static str,
    pub outline_done: &'static str,
    pub point: &'static str,
    pub move_point: &'static str,
    pub delete_point: &'static str,
    pub three_stay: &'static str,
    /// A coordinate of a point, by direction.
    pub point_at: [&'static str; 3],
    pub not_a_number: &'static str,
    pub shape: fn(Shape) -> &'static str,
    pub points: fn(Shape, Facing) -> &'static str,
    /// A pallet by its name in the core's list.
    pub pallet: fn(&str) -> &'static str,
}
