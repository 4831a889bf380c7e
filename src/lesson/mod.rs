//! Lessons, problems (guided and general) and class profiles as JSON files. `lessons/README.md` tells how to write one.

mod class;
mod decode;
mod family;
mod fault;
mod geometry;
mod grid;
mod model;
mod names;
mod order;
mod quantity;
mod read;
mod shelf;
mod system_asked;
mod system_faults;
mod system_hold;
mod system_lamina;
mod system_names;
mod system_order;
mod system_parts;
mod system_read;
mod system_rope;
mod system_spot;
mod system_write;
mod texts;
mod wording;
mod write;

pub use class::{ClassProfile, is_class, lesson_as_begun, parse_class};
pub use family::Lesson;
pub use fault::{Fault, FaultKind};
pub use grid::{Grid, GridPlace};
pub use read::{parse_lesson, parse_problem};
pub use shelf::{Checked, check_file, fault_at, faults_beside, is_lesson, model_alone};
pub use system_read::{ProblemFile, parse_problem_file, parse_system};
pub use system_write::write_system;
pub use write::write_problem;

/// The lessons that are built into the program, in the order in which they are taught.
pub fn built_in() -> Vec<Lesson> {
    BUILT_IN
        .iter()
        .filter_map(|(_, json)| parse_lesson(json).ok())
        .collect()
}

/// The file name and the text of each built-in lesson. A test keeps them free of faults.
const BUILT_IN: &[(&str, &str)] = &[
    ("counter.json", include_str!("../../lessons/counter.json")),
    ("walkway.json", include_str!("../../lessons/walkway.json")),
    ("mast.json", include_str!("../../lessons/mast.json")),
];

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_built_in_lesson_has_a_fault() {
        for (name, json) in BUILT_IN {
            if let Err(faults) = parse_lesson(json) {
                let told: Vec<String> = faults.iter().map(Fault::to_string).collect();
                panic!("{name}:\n{}", told.join("\n"));
            }
        }
    }
}
