//! A printed working uses nothing before it is found.

use super::METHODS;
use crate::systems_random::system;
use leverwright::lesson::{ProblemFile, parse_problem_file, parse_system};
use leverwright::problem::Place;
use leverwright::statics::roots;
use leverwright::system::{BodyId, Spot, System};
use leverwright::working::{Method, Quantity, Told, Underivable, Working, derive, settle, told};
use std::collections::BTreeSet;

/// Every problem file of these folders of tests/, by name.
pub(super) fn filed(folders: &[&str]) -> Vec<(String, System)> {
    let mut found = Vec::new();
    for folder in folders {
        let path = format!("{}/tests/{folder}", env!("CARGO_MANIFEST_DIR"));
        for entry in std::fs::read_dir(path).unwrap() {
            let path = entry.unwrap().path();
            let is_json = path.extension().is_some_and(|one| one == "json");
            if !is_json || path.ends_with("index.json") {
                continue;
            }
            let json = std::fs::read_to_string(&path).unwrap();
            let system = match parse_problem_file(&json) {
                Ok(ProblemFile::General(system)) => system,
                Ok(ProblemFile::Guided(problem)) => System::of(&problem),
                Err(faults) => panic!("{}: {faults:?}", path.display()),
            };
            found.push((path.display().to_string(), system));
        }
    }
    found
}

/// The values at which a system can be worked: as given, or at each value of what is sought.
pub(super) fn settings(system: &System) -> Vec<Vec<f64>> {
    let Some(sought) = system.parts().sought.clone() else {
        return vec![system.values()];
    };
    let found = roots(system, system.gravity()).unwrap_or_default();
    let can_be = found.iter().filter(|root| root.solution.is_ok());
    let at = can_be.map(|root| {
        let mut values = system.values();
        values[sought.given.0] = root.value;
        values
    });
    at.collect()
}

/// Every point that a person may name: where something acts, and the ends and middle of a leg.
fn pivots(system: &System) -> Vec<Option<Spot>> {
    let acts = system.acts();
    let effects = acts.iter().flat_map(|act| &act.on);
    let mut found: Vec<Option<Spot>> = vec![None];
    found.extend(effects.map(|effect| Some(effect.at.clone())));
    if system.leg(BodyId(0), 0).is_some() {
        for place in [Place::Foot, Place::Middle, Place::Tip] {
            let (body, leg) = (BodyId(0), 0);
            found.push(Some(Spot::On { body, leg, place }));
        }
    }
    found
}

/// The names in a formula.
fn names(formula: &str) -> BTreeSet<String> {
    let is_part = |letter: char| {
        (letter.is_alphanumeric() && letter != '²') || "′'⊥∥,_\u{304}".contains(letter)
    };
    let words = formula.split(|letter| !is_part(letter));
    let words = words.map(|word| word.trim_matches(','));
    let is_name = |word: &&str| {
        let first = word.chars().next();
        first.is_some_and(char::is_alphabetic)
            && !["g", "π", "sin", "cos", "tan", "atan", "asin", "acos"].contains(word)
    };
    words.filter(is_name).map(str::to_owned).collect()
}

/// True for a bare value: `−12.3 N m`, `30°`.
fn is_value(text: &str) -> bool {
    let digits = text.trim_start_matches('−');
    digits.starts_with(|letter: char| {
        digits.is_ascii() && letter.is_ascii_digit() || letter.is_ascii_digit()
    }) && !text.contains(['·', '+', '/', '('])
        && !text.trim_start_matches('−').contains('−')
        || text
            .strip_suffix(" m/s²")
            .is_some_and(|rest| !rest.contains(' '))
}

struct Reader {
    known: BTreeSet<String>,
    /// Found by what is worked now, or told by a formula of such without a value.
    open: BTreeSet<String>,
    faults: Vec<String>,
}

impl Reader {
    /// Reads a formula in names; true if something open stands in it.
    fn formula(&mut self, line: &str, formula: &str) -> bool {
        let mut is_open = false;
        for name in names(formula) {
            is_open |= self.open.contains(&name);
            if !self.known.contains(&name) && !self.open.contains(&name) {
                self.faults.push(format!("{name} in “{line}”"));
            }
        }
        is_open
    }

    fn quantity(&mut self, text: &str) {
        let parts: Vec<&str> = text.split(" = ").collect();
        let (name, last) = (parts[0], parts[parts.len() - 1]);
        if parts.len() > 2 || !is_value(last) {
            let is_open = self.formula(text, parts[1]);
            let has_value = names(last).is_disjoint(&self.open);
            if is_open && has_value {
                self.faults.push(format!("a value in “{text}”"));
            }
            if is_open {
                self.open.insert(name.to_owned());
                return;
            }
        }
        self.open.remove(name);
        self.known.insert(name.to_owned());
    }
}

/// What is printed before it is found.
fn early(system: &System, lines: &[Told]) -> Vec<String> {
    let sought = system.parts().sought.as_ref().map(|sought| sought.given);
    let givens = system.givens().iter().enumerate();
    let mut reader = Reader {
        known: givens
            .filter(|(index, _)| sought.map(|given| given.0) != Some(*index))
            .map(|(_, given)| given.symbol.shown())
            .collect(),
        open: BTreeSet::new(),
        faults: Vec::new(),
    };
    let is_head = |line: &Told| {
        !matches!(
            line,
            Told::Quantity { .. } | Told::Balance { .. } | Told::Given { .. } | Told::Angle { .. }
        )
    };
    for (index, line) in lines.iter().enumerate() {
        match line {
            Told::Balance { names, .. } => {
                reader.formula(names, names);
            }
            Told::Trial { name, .. } => {
                reader.known.insert(name.clone());
            }
            Told::Given { text } => match text.split_once(" = ") {
                Some((name, value)) if is_value(value) => {
                    reader.quantity(&format!("{name} = {value}"))
                }
                _ => {
                    reader.formula(text, text);
                }
            },
            Told::Quantity { text, .. } | Told::Angle { text, .. } => {
                if text.contains(" = ") {
                    reader.quantity(text);
                }
            }
            head => {
                let until = match head {
                    // A law that is told beforehand.
                    Told::Condition(_) => lines.len(),
                    _ => lines[index + 1..]
                        .iter()
                        .position(is_head)
                        .map_or(lines.len(), |at| index + 1 + at),
                };
                let found = lines[index..until].iter().filter_map(|line| match line {
                    Told::Quantity { text, .. } => {
                        let (name, value) = text.split_once(" = ")?;
                        let is_all = matches!(head, Told::Condition(_) | Told::Sines);
                        (is_all || is_value(value)).then(|| name.to_owned())
                    }
                    _ => None,
                });
                let found: Vec<String> = found.collect();
                let known = &reader.known;
                let fresh: Vec<String> = found
                    .into_iter()
                    .filter(|name| !known.contains(name))
                    .collect();
                reader.open.extend(fresh);
            }
        }
    }
    reader.faults
}

#[test]
fn verif_nothing_is_printed_before_it_is_found() {
    let mut systems = filed(&["boards", "worked", "cases", "workings"]);
    for index in 0..40 {
        systems.push((format!("random {index}"), system(57, index).1));
    }
    let (mut read, mut by_trial, mut faults) = (0, 0, Vec::new());
    let mut primed = 0;
    for (name, system) in &systems {
        for values in settings(system) {
            for pivot in pivots(system) {
                for method in METHODS.into_iter().chain([Method::Triangle]) {
                    if pivot.is_some() && method == Method::Triangle {
                        continue;
                    }
                    let Ok(working) = derive(system, &values, method, pivot.as_ref()) else {
                        continue;
                    };
                    read += 1;
                    let lines = told(system, &working, &values);
                    let symbols = working.quantities.iter().map(|named| named.symbol.shown());
                    let symbols: Vec<String> = symbols.collect();
                    primed += symbols.iter().filter(|name| name.ends_with('′')).count();
                    let untyped = symbols.iter().filter(|name| name.contains(','));
                    faults.extend(untyped.map(|name| format!("{name} cannot be typed")));
                    let is_trial = |line: &Told| matches!(line, Told::Trial { .. });
                    by_trial += usize::from(lines.iter().any(is_trial));
                    for fault in early(system, &lines) {
                        faults.push(format!("{name} {method:?} {pivot:?}: {fault}"));
                    }
                }
            }
        }
    }
    assert!(read > 2000 && by_trial > 0, "{read} {by_trial}");
    assert!(primed > 0, "no name needs a prime");
    assert!(
        faults.is_empty(),
        "{} of {read}\n{}",
        faults.len(),
        faults.join("\n")
    );
}

/// A problem of tests/workings by the triangle, at the first value of what is sought.
fn by_triangle(name: &str) -> (System, Vec<f64>, Result<Working, Underivable>) {
    let path = format!("{}/tests/workings/{name}.json", env!("CARGO_MANIFEST_DIR"));
    let system = parse_system(&std::fs::read_to_string(path).unwrap()).unwrap();
    let values = settle(&system).unwrap().values;
    let working = derive(&system, &values, Method::Triangle, None);
    (system, values, working)
}

/// What is sought follows from the forces of the triangle: a mass from its weight, a push along a
/// known line, a coefficient from friction and push, a mass from a rope at its limit.
#[test]
fn verif_the_triangle_gives_what_is_sought() {
    for (name, line) in [
        ("lid", "m = Wb/g = 135 N/(9.8 m/s²) = 13.8 kg"),
        (
            "block",
            "P = W·sin αP/sin αW = 118 N·sin 11.3°/sin 78.7° = 23.5 N",
        ),
        ("rod_mu", "μ = FN/N = 48.3 N/89.5 N = 0.539"),
        ("stay_breaks", "m = W1/g = 250 N/(9.8 m/s²) = 25.5 kg"),
    ] {
        let (system, values, working) = by_triangle(name);
        let working = working.unwrap_or_else(|why| panic!("{name}: {why}"));
        let given = system.parts().sought.as_ref().unwrap().given;
        let symbol = &system.given(given).symbol;
        let found = working.quantities.iter().enumerate().rev();
        let mut of_it = found.filter(|(_, named)| named.symbol == *symbol);
        let (index, _) = of_it.next().unwrap();
        let value = working
            .value(Quantity(index), &values, system.gravity())
            .unwrap();
        assert!(
            (value / values[given.0] - 1.0).abs() < 1e-6,
            "{name}: {value}"
        );
        let is_it = |told: &Told| matches!(told, Told::Quantity { text, .. } if text == line);
        let lines = told(&system, &working, &values);
        assert!(lines.iter().any(is_it), "{name}: {lines:#?}");
    }
}

/// Where the triangle does not give what is sought it says so, and why there is none otherwise.
#[test]
fn a_triangle_that_does_not_help_is_refused_with_its_reason() {
    for (name, code, why) in [
        (
            "board",
            "sought-not-by-triangle",
            "d is sought, and this working",
        ),
        (
            "both_rough",
            "sought-not-by-triangle",
            "θ does not follow from their sizes",
        ),
        ("chest", "no-triangle", "the floor pushes along a width"),
        (
            "hay",
            "parallel-forces",
            "the forces on the body are all parallel",
        ),
        (
            "beam_on_two",
            "parallel-forces",
            "the forces on the body are all parallel",
        ),
        ("deck", "too-many-forces", "and Wb, W1, A, B and C act"),
        // The direction of the whole force at the wall rests on the coefficient.
        (
            "wall_reaches",
            "sought-not-by-triangle",
            "μ is sought, and this working",
        ),
        (
            "floor_reaches",
            "sought-not-by-triangle",
            "μ is sought, and this working",
        ),
    ] {
        let trouble = by_triangle(name).2.unwrap_err();
        assert_eq!(trouble.code(), code, "{name}");
        assert!(trouble.to_string().contains(why), "{name}: {trouble}");
    }
}

/// A sum of given forces beside a force R has a name of its own, and its parts have that name.
#[test]
fn one_quantity_has_one_name_in_a_triangle() {
    let (system, values, working) = by_triangle("knot");
    let lines = told(&system, &working.unwrap(), &values);
    let text = format!("{lines:?}");
    for part in [
        "R2x = ",
        "R2y = ",
        "R2 = √(R2x² + R2y²)",
        "ψR2 = atan(R2y/R2x)",
    ] {
        assert!(text.contains(part), "{part}: {text}");
    }
    assert!(!text.contains("Rx") && !text.contains("Ry"), "{text}");
}
