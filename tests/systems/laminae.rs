//! Centres of mass of laminae against handbooks, and what rests on them.

use leverwright::lesson::{parse_system, write_system};
use leverwright::plane::Vector;
use leverwright::statics::{roots, solve_system};
use leverwright::system::{ActId, System};
use leverwright::working::{Method, Told, derive, told};
use std::f64::consts::PI;

/// A level plate on a pin at its beginning and a roller 1 m further, of these shapes.
fn plate(mass: &str, shapes: &str) -> Result<System, Vec<String>> {
    let json = format!(
        r#"{{"leverwright": 1, "g": "9.8 m/s^2", "system": {{
        "bodies": [{{"name": "plate", "legs": [{{"length": "1.0 m", "direction": "right"}}]}}],
        "weights": [{{"symbol": "W", "noun": "plate", "body": "plate"{mass}, "shapes": [{shapes}]}}],
        "holds": [{{"symbol": "A", "noun": "pin", "body": "plate", "at": "origin", "kind": "hinge"}},
                  {{"symbol": "B", "noun": "roller", "body": "plate", "at": {{"on": "plate", "at": "tip"}}, "kind": "push", "direction": "up"}}]}},
        "text": {{"title": "Plate", "statement": "A plate."}}}}"#
    );
    parse_system(&json).map_err(|faults| super::told(&faults))
}

const WHOLE: &str = r#", "mass": "6 kg""#;

fn centre(mass: &str, shapes: &str) -> Vector {
    let system = plate(mass, shapes).unwrap_or_else(|faults| panic!("{shapes}: {faults:?}"));
    assert_eq!(parse_system(&write_system(&system)), Ok(system.clone()));
    let values = system.values();
    let centre = system.lamina(0).unwrap().centre(&values);
    // Where the weight acts is where the lamina's centre is, and the working says the same.
    let at = system.acts()[0].on[0].at.clone();
    assert!((system.point(&at, &values) - centre).size() < 1e-12);
    for method in [Method::Components, Method::LeverArms, Method::Coordinates] {
        let working = derive(&system, &values, method, None).unwrap();
        let solution = solve_system(&system, &values, system.gravity());
        // The plate rests on the roller only where its centre lies right of the pin.
        let roller = solution.map(|found| found.reaction(ActId::Hold(1)).unwrap().size);
        let told = told(&system, &working, &values);
        assert!(matches!(told[0], Told::Centre { .. }), "{told:?}");
        let sums: Vec<f64> = working.centres[0]
            .sums
            .iter()
            .filter_map(|sum| {
                let named = working.named(*sum)?;
                let place = matches!(named.meaning, leverwright::working::Meaning::CentreAt(..));
                place.then(|| working.value(*sum, &values, system.gravity()))?
            })
            .collect();
        assert!((sums[0] - centre.x).abs() < 1e-12 && (sums[1] - centre.y).abs() < 1e-12);
        let weight = system.lamina(0).unwrap().mass(&values) * system.gravity();
        assert!((roller.unwrap() - weight * centre.x).abs() < 1e-9 * weight);
    }
    centre
}

fn near(found: Vector, x: f64, y: f64) {
    assert!(
        (found.x - x).abs() < 1e-12 && (found.y - y).abs() < 1e-12,
        "{found:?} for {x}, {y}"
    );
}

/// The table of centroids of plane figures: Meriam and Kraige, Engineering Mechanics: Statics,
/// appendix D, table D/3; the same stand in Beer and Johnston, Statics, figure 5.8A (both from
/// memory). Several sizes each.
#[test]
fn val_centroids_of_the_handbook() {
    for size in [0.12, 0.3, 0.75] {
        let (b, h) = (size, 0.6 * size);
        let arc = 4.0 * size / (3.0 * PI);
        let one = |shape: &str| centre(WHOLE, shape);
        let at = |shape: &str, more: &str| {
            format!(r#"{{"shape": "{shape}", "x": "0.1 m", "y": "-0.05 m", {more}}}"#)
        };
        let flat = format!(r#""width": "{b} m", "height": "{h} m""#);
        let round = format!(r#""radius": "{size} m""#);
        near(one(&at("rectangle", &flat)), 0.1 + b / 2.0, -0.05 + h / 2.0);
        near(one(&at("disc", &round)), 0.1, -0.05);
        near(one(&at("semicircle", &round)), 0.1, -0.05 + arc);
        near(one(&at("quarter-circle", &round)), 0.1 + arc, -0.05 + arc);
        // A triangle of base b whose apex stands a from the left: x̄ = (a + b)/3, ȳ = h/3.
        for (apex, a) in [
            (r#""foot""#.to_owned(), 0.0),
            (r#""middle""#.to_owned(), b / 2.0),
            (r#""tip""#.to_owned(), b),
            (r#"{"fraction": "1/5"}"#.to_owned(), b / 5.0),
            (r#""0.04 m""#.to_owned(), 0.04),
        ] {
            let triangle = at("triangle", &format!(r#"{flat}, "apex": {apex}"#));
            near(one(&triangle), 0.1 + (a + b) / 3.0, -0.05 + h / 3.0);
        }
    }
}

/// Every shape, turned and moved, and cut laminae: SymPy's exact integrals
/// (tests/reference/centroids.py).
#[test]
fn val_centroids_by_integration() {
    let kept = include_str!("../reference/centroids.json");
    let laminae: Vec<serde_json::Value> = serde_json::from_str(kept).unwrap();
    assert!(laminae.len() >= 18);
    for lamina in laminae {
        let shapes: Vec<String> = (lamina["shapes"].as_array().unwrap().iter())
            .map(|shape| {
                // Once by its word in the place of a length.
                let shape = shape.to_string();
                shape.replace("\"apex\":\"0.6 m\"", "\"apex\":\"tip\"")
            })
            .collect();
        let system = plate(r#", "mass_per_area": "10 kg/m^2""#, &shapes.join(", ")).unwrap();
        let values = system.values();
        let found = system.lamina(0).unwrap();
        let centroid = |axis: usize| lamina["centroid"][axis].as_f64().unwrap();
        near(found.centre(&values), centroid(0), centroid(1));
        let area = lamina["area"].as_f64().unwrap();
        assert!(
            (found.mass(&values) - 10.0 * area).abs() < 1e-12,
            "{lamina}"
        );
    }
}

/// Turned shapes: by hand from the same table, x and y exchanged or with the other sign.
#[test]
fn val_shapes_that_point_another_way() {
    let arc = 4.0 * 0.3 / (3.0 * PI);
    let lies = |shape: &str, points: &str| {
        let size = match shape {
            "triangle" => r#""width": "0.3 m", "height": "0.6 m""#,
            _ => r#""radius": "0.3 m""#,
        };
        // A large sheet beside it keeps the centre of mass over the supports.
        let sheet = r#"{"shape": "rectangle", "width": "0.4 m", "height": "0.1 m", "x": "0.5 m", "y": "-1 m", "mass": "3 kg"}"#;
        let piece =
            format!(r#"{{"shape": "{shape}", {size}, "points": "{points}", "mass": "1 kg"}}"#);
        let both = centre("", &format!("{piece}, {sheet}"));
        (both * 4.0) - Vector::new(0.7, -0.95) * 3.0
    };
    near(lies("semicircle", "left"), -arc, 0.0);
    near(lies("semicircle", "down"), 0.0, -arc);
    near(lies("semicircle", "right"), arc, 0.0);
    near(lies("quarter-circle", "left"), -arc, arc);
    near(lies("quarter-circle", "down"), -arc, -arc);
    near(lies("quarter-circle", "right"), arc, -arc);
    near(lies("triangle", "left"), -0.2, 0.1);
    near(lies("triangle", "down"), -0.1, -0.2);
    near(lies("triangle", "right"), 0.2, -0.1);
}

/// An L-section 120 mm high and 80 mm wide of 12 mm thickness: the worked example of textbooks of
/// strength of materials (from memory of the kind; the numbers by hand from areas and moments).
#[test]
fn val_an_angle_section() {
    let found = centre(
        WHOLE,
        r#"{"shape": "rectangle", "width": "12 mm", "height": "120 mm"},
           {"shape": "rectangle", "width": "68 mm", "height": "12 mm", "x": "12 mm"}"#,
    );
    let (one, two) = (12.0 * 120.0, 68.0 * 12.0);
    near(
        found,
        (one * 6.0 + two * 46.0) / (one + two) / 1000.0,
        (one * 60.0 + two * 6.0) / (one + two) / 1000.0,
    );
}

/// A disc of radius R with a disc of radius R/2 cut out that touches its edge: the centre of mass
/// lies R/6 from the middle, away from the hole (a standard exercise; from memory).
#[test]
fn val_a_disc_with_a_round_hole_at_its_edge() {
    for radius in [0.2, 0.36] {
        let shapes = format!(
            r#"{{"shape": "disc", "radius": "{radius} m", "x": "0.5 m"}},
               {{"shape": "disc", "radius": "{} m", "x": "{} m", "hole": true}}"#,
            radius / 2.0,
            0.5 + radius / 2.0
        );
        near(centre(WHOLE, &shapes), 0.5 - radius / 6.0, 0.0);
    }
}

/// A square of side a without a quarter: 5a/12 from the far sides (a standard exercise; from memory).
#[test]
fn val_a_square_without_a_quarter() {
    let found = centre(
        r#", "mass_per_area": "12 kg/m^2""#,
        r#"{"shape": "rectangle", "width": "0.6 m", "height": "0.6 m"},
           {"shape": "rectangle", "width": "0.3 m", "height": "0.3 m", "x": "0.3 m", "y": "0.3 m", "hole": true}"#,
    );
    near(found, 0.25, 0.25);
}

/// Masses of their own: (2·0.1 + 3·0.5)/5 by hand.
#[test]
fn verif_pieces_with_masses_of_their_own() {
    let found = centre(
        "",
        r#"{"shape": "disc", "radius": "0.2 m", "x": "0.1 m", "mass": "2 kg"},
           {"shape": "disc", "radius": "0.2 m", "x": "0.5 m", "y": "0.4 m", "mass": "3 kg"}"#,
    );
    near(found, 0.34, 0.24);
}

fn faults(mass: &str, shapes: &str) -> Vec<String> {
    plate(mass, shapes).err().unwrap_or_default()
}

#[test]
fn what_cannot_be_cut_is_told_where_it_stands() {
    let sheet = r#"{"shape": "rectangle", "width": "0.6 m", "height": "0.4 m"}"#;
    let hole = |more: &str| format!("{sheet}, {{\"hole\": true, {more}}}");
    let says = |shapes: &str, wanted: &str| {
        let said = faults(WHOLE, shapes);
        assert!(
            said.len() == 1 && said[0].contains("line 3, column") && said[0].ends_with(wanted),
            "{shapes}: {said:?}"
        );
    };
    says(
        &hole(r#""shape": "disc", "radius": "0.5 m", "x": "0.3 m", "y": "0.2 m""#),
        "system.weights[0].shapes[1]: disc takes away as much as there is, or more",
    );
    for outside in [
        r#""shape": "disc", "radius": "0.1 m", "x": "0.55 m", "y": "0.2 m""#,
        r#""shape": "disc", "radius": "0.1 m", "x": "0.3 m", "y": "0.301 m""#,
        r#""shape": "rectangle", "width": "0.1 m", "height": "0.1 m", "x": "-0.1 m", "y": "0.1 m""#,
        r#""shape": "triangle", "width": "0.1 m", "height": "0.1 m", "x": "0.55 m", "y": "0 m""#,
    ] {
        let said = faults(WHOLE, &hole(outside));
        assert!(
            said.len() == 1
                && said[0].contains("system.weights[0].shapes[1]")
                && said[0].ends_with("reaches beyond the shapes that it is cut from"),
            "{outside}: {said:?}"
        );
    }
    // A hole may reach to the edge, and over the seam of two shapes.
    for inside in [
        r#""shape": "disc", "radius": "0.1 m", "x": "0.5 m", "y": "0.3 m""#,
        r#""shape": "semicircle", "radius": "0.2 m", "x": "0.3 m", "y": "0 m""#,
    ] {
        assert_eq!(
            faults(WHOLE, &hole(inside)),
            Vec::<String>::new(),
            "{inside}"
        );
    }
    let seam = format!(
        "{sheet}, {{\"shape\": \"rectangle\", \"width\": \"0.3 m\", \"height\": \"0.4 m\", \"x\": \"0.6 m\"}}, \
         {{\"shape\": \"disc\", \"radius\": \"0.1 m\", \"x\": \"0.6 m\", \"y\": \"0.2 m\", \"hole\": true}}"
    );
    assert_eq!(faults(WHOLE, &seam), Vec::<String>::new());
    says(
        &format!("{sheet}, {sheet}"),
        "system.weights[0].shapes[1]: rectangle overlaps a shape before it, so its area would count twice",
    );
    says(
        r#"{"shape": "disc", "radius": "0.1 m", "hole": true}"#,
        "system.weights[0]: plate has no shape but holes",
    );
    says(
        r#"{"shape": "rectangle", "width": "0 m", "height": "0.4 m"}"#,
        "system.weights[0].shapes[0].width: expected a length above 0 m, found \"0 m\"",
    );
    let said = faults(
        "",
        r#"{"shape": "disc", "radius": "0.2 m", "mass": "2 kg"},
           {"shape": "disc", "radius": "0.1 m", "mass": "2 kg", "hole": true}"#,
    );
    assert!(
        said.len() == 1
            && said[0].ends_with("system.weights[0]: the holes of plate take away all of its mass"),
        "{said:?}"
    );
    for (mass, shapes) in [
        ("", sheet),
        (
            WHOLE,
            r#"{"shape": "disc", "radius": "0.1 m", "mass": "1 kg"}"#,
        ),
    ] {
        let said = faults(mass, shapes);
        assert!(
            said.len() == 1 && said[0].contains("just one of these"),
            "{said:?}"
        );
    }
}

/// A plate that hangs by a corner: its centre of mass lies straight below. For a rectangle b by h
/// hung by one end of its side b, that side falls at tan θ = b/h from the horizontal: by hand, the
/// line from the corner to the middle makes atan(h/b) with the side b and is upright.
#[test]
fn val_a_plate_hung_by_a_corner() {
    let json = r#"{"leverwright": 1, "g": "9.8 m/s^2", "system": {
        "bodies": [{"name": "plate", "legs": [{"length": "0.8 m", "direction":
            {"angle": {"symbol": "θ", "sought": "angle"}, "from": "horizontal", "up": false, "side": "right"}}]}],
        "weights": [{"symbol": "W", "noun": "plate", "body": "plate", "mass": "3 kg", "shapes": [
            {"shape": "rectangle", "width": "0.8 m", "height": "0.5 m", "y": "-0.5 m"}]}],
        "holds": [{"symbol": "H", "noun": "nail", "body": "plate", "at": "origin", "kind": "hinge"}],
        "asked": ["sought", "H"],
        "sought": {"given": "θ", "from": "1 deg", "to": "89 deg", "when": {"rests": "plate"}}},
        "text": {"title": "Plate", "statement": "A plate hangs by a corner."}}"#;
    // Where the side rises the middle never comes below the nail.
    let rising = json.replace("\"up\": false", "\"up\": true");
    let none = parse_system(&rising).unwrap();
    assert_eq!(roots(&none, 9.8).unwrap_err().code(), "none-in-range");
    let system = parse_system(json).unwrap();
    let found = roots(&system, 9.8).unwrap();
    let [only] = &found[..] else {
        panic!("{found:?}");
    };
    assert!(
        (only.value.tan() - 0.8 / 0.5).abs() < 1e-9,
        "{}",
        only.value
    );
    let hook = only
        .solution
        .as_ref()
        .unwrap()
        .reaction(ActId::Hold(0))
        .unwrap();
    assert!(hook.force.x.abs() < 1e-9 && (hook.force.y - 3.0 * 9.8).abs() < 1e-9);
}
