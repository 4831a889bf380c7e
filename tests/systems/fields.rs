//! The schema of problem files is current, and the reader knows the same fields as the schema.

use super::{faults, form, guided};
use leverwright::lesson::{Fault, FaultKind, parse_problem_file, write_system};
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};

const PATH: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/lessons/problem.schema.json");

/// The schema of the types in form.rs. What may be left out may not be null.
fn schema() -> Value {
    let mut schema = schemars::schema_for!(form::ProblemFile).to_value();
    schema["title"] = json!("A problem file");
    without_null(&mut schema);
    schema
}

fn without_null(value: &mut Value) {
    match value {
        Value::Object(fields) => {
            if let Some(Value::Array(kinds)) = fields.get_mut("type") {
                kinds.retain(|kind| kind != "null");
                if let [only] = &kinds[..] {
                    let only = only.clone();
                    fields.insert("type".to_owned(), only);
                }
            }
            if let Some(Value::Array(forms)) = fields.get_mut("anyOf") {
                forms.retain(|form| form != &json!({"type": "null"}));
                if let [Value::Object(only)] = &forms[..] {
                    let only = only.clone();
                    fields.remove("anyOf");
                    fields.extend(only);
                }
            }
            fields.values_mut().for_each(without_null);
        }
        Value::Array(values) => values.iter_mut().for_each(without_null),
        _ => {}
    }
}

/// `UPDATE=1 cargo test --test main systems` writes it anew.
#[test]
fn the_schema_is_current() {
    let current = format!("{}\n", serde_json::to_string_pretty(&schema()).unwrap());
    if std::env::var_os("UPDATE").is_some() {
        std::fs::write(PATH, &current).unwrap();
    }
    let kept = std::fs::read_to_string(PATH).unwrap();
    assert!(
        kept == current,
        "run UPDATE=1 cargo test --test main systems"
    );
}

/// A file with every kind of object, and where one of each kind of the schema stands in it.
const GENERAL: &str = include_str!("every_object.json");
const PLACES: &[(&str, &str)] = &[
    ("GeneralFile", ""),
    ("System", "/system"),
    ("Body", "/system/bodies/0"),
    ("Leg", "/system/bodies/0/legs/0"),
    ("PointWeight", "/system/weights/0"),
    ("LaminaWeight", "/system/weights/1"),
    ("LaminaWeight", "/system/weights/2"),
    ("RectangleShape", "/system/weights/1/shapes/0"),
    ("TriangleShape", "/system/weights/2/shapes/0"),
    ("DiscShape", "/system/weights/1/shapes/1"),
    ("RoundShape", "/system/weights/2/shapes/1"),
    ("RoundShape", "/system/weights/2/shapes/2"),
    ("Centroid", "/system/ropes/0/ends/1/at"),
    ("MassLoad", "/system/loads/0"),
    ("ForceLoad", "/system/loads/1"),
    ("CoupleLoad", "/system/loads/2"),
    ("SpreadLoad", "/system/loads/3"),
    ("Rope", "/system/ropes/0"),
    ("End", "/system/ropes/0/ends/0"),
    ("PlainHold", "/system/holds/0"),
    ("PlainHold", "/system/holds/1"),
    ("PlainHold", "/system/holds/2"),
    ("LineHold", "/system/holds/3"),
    ("LineHold", "/system/holds/4"),
    ("RoughHold", "/system/holds/5"),
    ("BaseHold", "/system/holds/6"),
    ("UpTo", "/system/holds/5/friction"),
    ("Limiting", "/system/holds/6/friction"),
    ("Horizontal", "/system/asked/0"),
    ("Vertical", "/system/asked/1"),
    ("AskedCouple", "/system/asked/2"),
    ("Sought", "/system/sought"),
    ("Named", "/system/bodies/0/legs/0/length"),
    ("SameAs", "/system/bodies/0/legs/1/length"),
    ("Unknown", "/system/bodies/1/legs/0/length"),
    ("Exact", "/system/weights/0/mass"),
    ("OnLeg", "/system/weights/0/at"),
    ("Coordinates", "/system/loads/0/at"),
    ("Resultant", "/system/loads/1/at"),
    ("Sum", "/system/loads/0/at/x"),
    ("Fraction", "/system/weights/0/at/at"),
    ("Oblique", "/system/bodies/0/legs/0/direction"),
    ("FromAxis", "/system/bodies/1/legs/0/direction"),
    ("Towards", "/system/ropes/0/ends/0/direction"),
    ("Along", "/system/loads/1/direction"),
    ("Across", "/system/bodies/0/legs/1/direction"),
    ("WithLeg", "/system/loads/3/direction"),
    ("Text", "/text"),
];

/// The conditions of what is sought, of which a file has one.
const CONDITIONS: &[(&str, &str)] = &[
    ("Reaches", r#"{"reaches": "T", "limit": "300 N"}"#),
    ("Vanishes", r#"{"vanishes": "T"}"#),
    ("Slips", r#"{"slips": "N", "coefficient": "0.4"}"#),
    ("Topples", r#"{"topples": "B"}"#),
    ("Rests", r#"{"rests": "frame"}"#),
];

const GUIDED: &str = include_str!("../lines/mast.json");
const GUIDED_EVERY: &str = r#"{"leverwright": 1, "g": "9.8 m/s^2", "model": {
    "body": {"noun": "oar", "length": {"symbol": "L", "is": "2.4 m"}, "mass": "12 kg", "towards": "left",
             "tilt": {"angle": "35 deg", "from": "vertical"}},
    "supports": [{"noun": "pin", "at": "foot", "kind": "hinge"}],
    "loads": [{"noun": "pail", "mass": "4 kg", "at": "tip"}],
    "ropes": [{"noun": "line", "at": "1.6 m", "direction": {"angle_with_body": "50 deg"}},
              {"noun": "cord", "at": {"fraction": "1/2"}, "direction": {"angle": "20 deg", "from": "vertical", "up": true, "side": "left"}}]},
  "text": {"title": "Oar", "statement": "{L} {m_b} {θ} {m_1} {d_T} {β} {β_2}", "meanings": {"L": "a", "m_b": "b", "θ": "c", "m_1": "d", "d_T": "e", "β": "f", "β_2": "g"}}}"#;
const GUIDED_PLACES: &[(&str, &str)] = &[
    ("GuidedFile", ""),
    ("Model", "/model"),
    ("GuidedBody", "/model/body"),
    ("GuidedRising", "/model/body/tilt"),
    ("GuidedSupport", "/model/supports/0"),
    ("GuidedRope", "/model/ropes/0"),
    ("GuidedLoad", "/model/loads/0"),
    ("WithBody", "/model/ropes/0/direction"),
    ("GuidedOblique", "/model/ropes/1/direction"),
    ("Fraction", "/model/ropes/1/at"),
    ("GuidedText", "/text"),
];

/// Every object of the schema: its fields, and which of them must stand.
fn objects(schema: &Value) -> BTreeMap<String, (BTreeSet<String>, BTreeSet<String>)> {
    let mut objects = BTreeMap::new();
    for (name, form) in schema["$defs"].as_object().unwrap() {
        let Some(fields) = form["properties"].as_object() else {
            continue;
        };
        let names = fields.keys().cloned().collect();
        let required = form["required"].as_array().into_iter().flatten();
        let required = required.map(|field| field.as_str().unwrap().to_owned());
        objects.insert(name.clone(), (names, required.collect()));
    }
    objects
}

fn faults_of(file: &Value) -> Vec<Fault> {
    parse_problem_file(&file.to_string())
        .err()
        .unwrap_or_default()
}

/// Holds the fields of one object of a file against those of its kind in the schema.
fn compare(file: &Value, kind: &str, pointer: &str) {
    let (fields, required) = &objects(&schema())[kind];
    let at = |file: &Value| {
        file.pointer(pointer)
            .unwrap_or_else(|| panic!("{pointer}"))
            .clone()
    };
    let mut stranger = file.clone();
    stranger.pointer_mut(pointer).unwrap()["nobody"] = json!(1);
    let known = faults_of(&stranger)
        .into_iter()
        .find_map(|fault| match fault.kind {
            FaultKind::Unknown { known } if fault.path.ends_with("nobody") => Some(known),
            _ => None,
        });
    let known: BTreeSet<String> = known
        .unwrap_or_else(|| panic!("{kind} takes any field"))
        .into_iter()
        .collect();
    assert_eq!(&known, fields, "{kind} at {pointer}");
    for field in at(file).as_object().unwrap().keys() {
        let mut without = file.clone();
        without
            .pointer_mut(pointer)
            .unwrap()
            .as_object_mut()
            .unwrap()
            .remove(field);
        // One of mass and force, or one of the ways to tell a lamina's mass, must stand there, which the schema does not say.
        if matches!(
            (kind, field.as_str()),
            ("GuidedLoad" | "LaminaWeight", "mass") | ("LaminaWeight", "mass_per_area")
        ) {
            continue;
        }
        let object = pointer.trim_start_matches('/').replace('/', ".");
        let missing = faults_of(&without).iter().any(|fault| {
            let path = fault.path.replace('[', ".").replace(']', "");
            let child = match object.as_str() {
                "" => Some(path.as_str()),
                _ => path
                    .strip_prefix(&object)
                    .and_then(|rest| rest.strip_prefix('.')),
            };
            path == object || child.is_some_and(|child| !child.contains('.'))
        });
        assert_eq!(
            missing,
            required.contains(field),
            "{kind}.{field} at {pointer}"
        );
    }
}

#[test]
fn the_reader_knows_the_fields_of_the_schema_and_no_others() {
    let general: Value = serde_json::from_str(GENERAL).unwrap();
    let guided: Value = serde_json::from_str(GUIDED_EVERY).unwrap();
    for file in [&general, &guided] {
        assert!(
            faults_of(file).is_empty(),
            "{:#?}",
            super::told(&faults_of(file))
        );
    }
    let mut seen: BTreeSet<&str> = BTreeSet::new();
    for (file, places) in [(&general, PLACES), (&guided, GUIDED_PLACES)] {
        for (kind, pointer) in places {
            compare(file, kind, pointer);
            seen.insert(kind);
        }
    }
    for (kind, when) in CONDITIONS {
        let mut file = general.clone();
        file["system"]["sought"]["when"] = serde_json::from_str(when).unwrap();
        compare(&file, kind, "/system/sought/when");
        seen.insert(kind);
    }
    let schema = schema();
    let objects = objects(&schema);
    let all: BTreeSet<&str> = objects.keys().map(String::as_str).collect();
    assert_eq!(seen, all);
}

/// What the reader takes the types take, and so the schema.
#[test]
fn files_that_are_read_fit_the_types_of_the_schema() {
    let fits = |name: &str, text: &str| {
        let read = serde_json::from_str::<form::ProblemFile>(text);
        let file = read.unwrap_or_else(|trouble| panic!("{name}: {trouble}"));
        let (form::ProblemFile::General(form::GeneralFile { leverwright, .. })
        | form::ProblemFile::Guided(guided::GuidedFile { leverwright, .. })) = file;
        assert_eq!(leverwright, 1);
    };
    for (name, text) in [
        ("good", faults::GOOD),
        ("every", GENERAL),
        ("mast", GUIDED),
        ("oar", GUIDED_EVERY),
    ] {
        fits(name, text);
    }
    for seed in 0..200 {
        if let Some(system) = super::drawn::system(seed) {
            fits(&format!("drawn {seed}"), &write_system(&system));
        }
    }
    for entry in std::fs::read_dir(concat!(env!("CARGO_MANIFEST_DIR"), "/tests/cases")).unwrap() {
        let path = entry.unwrap().path();
        if !path.ends_with("index.json") {
            fits(
                &path.display().to_string(),
                &std::fs::read_to_string(&path).unwrap(),
            );
        }
    }
}
