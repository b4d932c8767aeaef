use super::*;

fn forms() -> Vec<Form> {
    let l = [(0.0, 0.0), (0.9, 0.0), (0.9, 0.3), (0.4, 0.3), (0.4, 0.8), (0.0, 0.8)];
    vec![
        Form::block(DVec3::new(1.2, 0.8, 0.5)),
        Form::Prism { outline: l.map(|(u, v)| DVec2::new(u, v)).to_vec(), length: 0.6 },
        Form::Cylinder { diameter: 0.4, bore: 0.0, length: 1.1 },
        Form::Cylinder { diameter: 0.4, bore: 0.3, length: 1.1 },
        Form::Cone { diameter: 0.6, length: 0.9 },
        Form::Sphere { diameter: 0.5 },
        Form::HalfSphere { diameter: 0.7 },
    ]
}

/// Source: Gere and the usual statics tables (case C31): a cone 4 high has its centroid 1 above its
/// foot, half a sphere of radius 8 has it 3 above its flat side.
#[test]
fn centroids_of_the_tables() {
    assert!((Form::Cone { diameter: 1.0, length: 4.0 }.centroid().z - 1.0).abs() < 1e-15);
    assert!((Form::HalfSphere { diameter: 16.0 }.centroid().z - 3.0).abs() < 1e-15);
    let (wedge, facing) = Form::wedge(DVec3::new(3.0, 1.0, 3.0), Facing::Heel).expect("a wedge");
    let wedge = Solid::new(wedge, facing, DVec3::ZERO);
    assert!((wedge.centroid() - DVec3::new(1.0, 0.0, 1.0)).length() < 1e-15, "a triangle's at a third");
}

#[test]
fn it_stands_where_it_was_put_whichever_way_it_points() {
    let place = DVec3::new(0.3, -0.2, 0.144);
    for form in forms() {
        for facing in Facing::ALL {
            let solid = Solid::new(form.clone(), facing, place);
            let (lo, hi) = solid.extents();
            assert!((lo.x - place.x).abs() < 1e-12 && (lo.z - place.z).abs() < 1e-12, "{form:?} {facing:?}");
            assert!((0.5 * (lo.y + hi.y) - place.y).abs() < 1e-12);
            let c = solid.centroid();
            assert!(c.cmpge(lo).all() && c.cmple(hi).all());
            for p in solid.rim() {
                assert!(p.cmpge(lo - 1e-9).all() && p.cmple(hi + 1e-9).all());
                assert!(solid.form.contains(unturned(facing, p - solid.origin), 1e-9), "its own edge is in it");
            }
            let (a, b) = polygon::extents(&solid.silhouette().side);
            assert!((a - DVec2::new(lo.x, lo.z)).length() < 1e-9 && (b - DVec2::new(hi.x, hi.z)).length() < 1e-9);
        }
    }
}

#[test]
fn a_point_and_a_dome_point_the_way_they_should() {
    let cone = |facing| Solid::new(Form::Cone { diameter: 0.4, length: 0.8 }, facing, DVec3::ZERO).centroid();
    assert!((cone(Facing::Up).z - 0.2).abs() < 1e-15 && (cone(Facing::Down).z - 0.6).abs() < 1e-15);
    assert!((cone(Facing::Ahead).x - 0.2).abs() < 1e-15 && (cone(Facing::Heel).x - 0.6).abs() < 1e-15);
    assert!((cone(Facing::Left).y + 0.2).abs() < 1e-15 && (cone(Facing::Right).y - 0.2).abs() < 1e-15);
    for (high, x, y) in [(Facing::Heel, 1.0, 0.0), (Facing::Ahead, 2.0, 0.0), (Facing::Left, 1.5, 1.0)] {
        let (form, facing) = Form::wedge(DVec3::new(3.0, 6.0, 3.0), high).expect("a wedge");
        let c = Solid::new(form, facing, DVec3::ZERO).centroid();
        assert!((c - DVec3::new(x, y, 1.0)).length() < 1e-12, "{high:?}: {c}");
    }
    assert!(Form::wedge(DVec3::ONE, Facing::Up).is_none());
}

#[test]
fn what_lies_inside_is_held_and_what_sticks_out_is_not() {
    let drum = Solid::new(Form::Cylinder { diameter: 0.6, bore: 0.0, length: 0.9 }, Facing::Up, DVec3::ZERO);
    let hole = |diameter, at| Solid::new(Form::Cylinder { diameter, bore: 0.0, length: 0.9 }, Facing::Up, at);
    assert!(drum.holds(&hole(0.6, DVec3::ZERO)) && drum.holds(&hole(0.2, DVec3::new(0.1, 0.1, 0.0))));
    assert!(!drum.holds(&hole(0.61, DVec3::new(-0.005, 0.0, 0.0))));
    assert!(!drum.holds(&hole(0.2, DVec3::new(0.0, 0.2, 0.0))), "inside its box, not inside the drum");
    let l = forms().remove(1);
    let angle = Solid::new(l, Facing::Left, DVec3::ZERO);
    let block = |x, z, side| Solid::new(Form::block(DVec3::splat(side)), Facing::Up, DVec3::new(x, 0.0, z));
    assert!(angle.holds(&block(0.1, 0.5, 0.2)) && !angle.holds(&block(0.5, 0.5, 0.2)));
}

#[test]
fn outlines_are_what_is_seen() {
    let l = Solid::new(forms().remove(1), Facing::Left, DVec3::ZERO).silhouette();
    assert_eq!((l.side.len(), l.plan.len(), l.front.len()), (6, 4, 4));
    let cone = Solid::new(Form::Cone { diameter: 0.6, length: 0.9 }, Facing::Up, DVec3::ZERO).silhouette();
    assert_eq!((cone.side.len(), cone.plan.len()), (3, CORNERS as usize));
}
