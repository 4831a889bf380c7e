//! Forces from equilibrium, held against published cases, tables, a second solver and laws.

mod cases;
mod described;
pub(crate) mod expression;
mod laws;
mod reference;
mod tables;
mod troubles;

use serde_json::Value;

/// A JSON file under tests/.
fn json(path: &str) -> Value {
    let path = format!("{}/tests/{path}", env!("CARGO_MANIFEST_DIR"));
    serde_json::from_str(&std::fs::read_to_string(&path).expect(&path)).expect(&path)
}

/// The list under a key; empty where there is none.
fn list<'a>(value: &'a Value, key: &str) -> &'a [Value] {
    value[key].as_array().map_or(&[], Vec::as_slice)
}

fn text(value: &Value) -> &str {
    value.as_str().unwrap_or_else(|| panic!("no text: {value}"))
}

fn number(value: &Value) -> f64 {
    value
        .as_f64()
        .unwrap_or_else(|| panic!("no number: {value}"))
}
