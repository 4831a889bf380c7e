//! The full worked key of a problem.

use super::args::{Arguments, Solve};
use super::board;
use super::class;
use super::general;
use super::json;
use super::library::{Any, Found, Library};
use super::{Trouble, shown};
use crate::hint::{Case, force_words, told};
use crate::key::{Key, Part, Pins, Rule, Sampling, Step, StepId, derive};
use crate::problem::{Force, ForceId, Problem};
use crate::sketch::{
    AngleMark, ComponentMark, DistanceMark, ForceMark, Marks, Scene, Stage, Style, picture, scene,
};
use crate::statics;
use crate::system::System;
use crate::text::{Slot, Words};
use crate::units::number_text;
use crate::working::why_unsolvable;
use std::io::{Write, stdout};

/// A part below this share of the other is nothing.
const NONE: f64 = 1e-9;

/// Columns and rows of a printed diagram.
const PICTURE: (u16, u16) = (64, 20);

/// Prints the key.
pub(super) fn run(arguments: &Arguments, wishes: &Solve, words: &Words) -> Result<(), Trouble> {
    let class = class::found(arguments, words)?;
    let mut library = Library::open(arguments.lessons.as_deref(), class, words);
    if !library.faults.is_empty() {
        return Err(Trouble::Input(library.faults));
    }
    let any = library.find_any(&wishes.problem, wishes.seed, 1, words);
    if let (true, Err(Trouble::File(_, faults))) = (wishes.json, &any) {
        writeln!(stdout().lock(), "{}", json::faulty(faults))?;
    }
    let found = match any? {
        Any::Guided(found) if wishes.method.is_none() && wishes.pivot.is_none() => found,
        Any::Guided(found) => {
            return general::run(&System::of(&found.problem), wishes, words);
        }
        Any::General(system) => return general::run(&system, wishes, words),
    };
    let solution = statics::solve(&found.problem, &found.problem.values());
    let solution = match solution {
        Ok(solution) => solution,
        Err(trouble) if wishes.json => {
            let text = json::refused(trouble.code(), &why_unsolvable(&trouble, words));
            writeln!(stdout().lock(), "{text}")?;
            return Err(Trouble::Input(vec![why_unsolvable(&trouble, words)]));
        }
        Err(trouble) => return Err(Trouble::Input(vec![why_unsolvable(&trouble, words)])),
    };
    // What has no guided working, or a hinge's part that only the numbers make nothing, is worked
    // like any other system.
    let key = match derive(&found.problem) {
        Ok(key) if !loses_a_part(&key, &Sampling::of(&found.problem)) => key,
        _ => return general::run(&System::of(&found.problem), wishes, words),
    };
    let text = if wishes.json {
        json::solved(&found, &key, &solution, words)
    } else {
        let mut text = header(&found, words);
        text.push_str(&worked(&found.problem, &key, words));
        text.push_str(&format!(
            "\n{}\n",
            carried(found.problem.figures(), false, words)
        ));
        let caution = words.retold("caution", found.problem.caution());
        text.push_str(&format!("\n{caution}\n"));
        let system = System::of(&found.problem);
        if let Ok(solved) = statics::solve_system(&system, &system.values(), system.gravity()) {
            text.push_str(&general::strained(&system, &solved, words));
        }
        shown(&text, words)
    };
    let mut output = stdout().lock();
    output.write_all(text.as_bytes())?;
    output.flush()?;
    Ok(())
}

/// Says that what is shown is rounded, some of it to `more` figures, and what is carried is not.
pub(super) fn carried(figures: u8, more: bool, words: &Words) -> String {
    let slots = [("figures", Slot::Value(figures.to_string()))];
    let key = match more {
        true => "solve.figures-more",
        false => "solve.figures",
    };
    words.say(key, &slots).to_string()
}

fn header(found: &Found, words: &Words) -> String {
    let problem = &found.problem;
    let mut text = format!("{}\n", problem.title());
    if let Some(origin) = &found.origin {
        let slots = [("code", Slot::Word(origin.code.clone()))];
        text.push_str(&format!("{}\n", words.say("solve.code", &slots)));
    }
    let g = [("g", Slot::Value(number_text(problem.gravity())))];
    text.push_str(&format!(
        "\n{}\n{}\n\n",
        problem.statement(),
        words.say("solve.gravity", &g)
    ));
    text
}

/// True if a part of the hinge's force is asked that is nothing beside the other: there is no
/// quotient of the two then, and no side.
fn loses_a_part(key: &Key, sampling: &Sampling) -> bool {
    let parts = key.steps.iter().filter_map(|step| match step.id {
        StepId::Reaction(_, Part::Along(_)) => key.value(step.id, sampling.own(), &Pins::new()),
        _ => None,
    });
    let sizes: Vec<f64> = parts.map(f64::abs).collect();
    let largest = sizes.iter().copied().fold(0.0, f64::max);
    sizes.iter().any(|size| *size <= NONE * largest)
}

fn worked(problem: &Problem, key: &Key, words: &Words) -> String {
    let sampling = Sampling::of(problem);
    let case = Case {
        problem,
        key,
        sampling: &sampling,
        own: Pins::new(),
    };
    let mut text = drawn(problem, &as_told());
    text.push('\n');
    // The guided walk asks for the parts and balances of the hinge's force in one go.
    let on_the_way = |id| matches!(id, StepId::PartOf(..) | StepId::ForceSum(_));
    for step in key
        .steps
        .iter()
        .filter(|step| step.asked || on_the_way(step.id))
    {
        let title = capitalised(&board::title(words, problem, step.id));
        text.push_str(&format!("{title}\n"));
        for line in lines(&case, step, words) {
            text.push_str(&format!("    {line}\n"));
        }
        if step.id == StepId::MomentSum {
            text.push('\n');
            text.push_str(&drawn(problem, &turning(problem, key, &sampling)));
            text.push('\n');
        }
    }
    text
}

/// The lines of a step under its title.
fn lines(case: &Case<'_>, step: &Step, words: &Words) -> Vec<String> {
    match (&step.rule, step.id) {
        (Rule::Statement, StepId::Forces) => {
            let forces = case.problem.forces();
            let told = |force: &Force<'_>| force_words(words, case, force.id) + ".";
            forces.iter().map(told).collect()
        }
        (Rule::Statement, _) => vec![words.word("solve.pivot")],
        (Rule::Balance(_), id) => board::written(case.problem, case.key, case.sampling, id)
            .map(|written| vec![format!("{},", written.names), written.numbers])
            .unwrap_or_default(),
        (_, id) => vec![told(words, case, id)],
    }
}

/// A diagram as text.
fn drawn(problem: &Problem, marks: &Marks) -> String {
    picture_text(&scene(problem, &problem.values(), marks))
}

/// A scene as text.
pub(super) fn picture_text(scene: &Scene) -> String {
    let picture = picture(scene, PICTURE.0, PICTURE.1, Style { unicode: true });
    let mut text = String::new();
    for line in picture.lines() {
        text.push_str(line.trim_end());
        text.push('\n');
    }
    for entry in &picture.legend {
        text.push_str(&format!("  {} {}\n", entry.mark, entry.text));
    }
    text
}

/// The scene with its givens.
pub(super) fn as_told() -> Marks {
    Marks {
        stage: Stage::Scene,
        givens: true,
        ..Marks::default()
    }
}

/// The beam with the forces across it and their distances.
fn turning(problem: &Problem, key: &Key, sampling: &Sampling) -> Marks {
    let value = |id: StepId| key.value(id, sampling.own(), &Pins::new());
    let symbol = |id: ForceId| {
        problem
            .force(id)
            .map_or_else(String::new, |force| force.symbol.shown())
    };
    let mut marks = Marks {
        stage: Stage::Turning,
        pivot: Some(key.pivot),
        ..Marks::default()
    };
    // A force through the pivot does not turn the body.
    for force in problem
        .forces()
        .iter()
        .filter(|force| key.step(StepId::Distance(force.id)).is_some())
    {
        marks.forces.push(ForceMark {
            force: force.id,
            label: symbol(force.id),
            direction: None,
        });
    }
    for step in &key.steps {
        match step.id {
            StepId::Across(force) => {
                marks.components.push(ComponentMark {
                    force,
                    label: step.symbol.shown(),
                });
            }
            StepId::Angle(force) => {
                marks.angles.push(AngleMark {
                    force,
                    label: step.symbol.shown(),
                    size: None,
                });
            }
            StepId::Distance(force) => {
                marks.distances.push(DistanceMark {
                    force,
                    label: value(step.id)
                        .map_or_else(String::new, |metres| problem.length_text(metres)),
                });
            }
            _ => {}
        }
    }
    marks
}

fn capitalised(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| {
        first.to_uppercase().chain(letters).collect()
    })
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use crate::sketch::flaws;

    #[test]
    fn verif_every_label_and_arrow_of_a_printed_diagram_is_clear() {
        for lesson in crate::lesson::built_in() {
            for seed in 1..61 {
                let problem = crate::draw::draw(&lesson, seed, "en").unwrap().problem;
                let key = derive(&problem).unwrap();
                let sampling = Sampling::of(&problem);
                for marks in [as_told(), turning(&problem, &key, &sampling)] {
                    let scene = scene(&problem, &problem.values(), &marks);
                    let style = Style { unicode: true };
                    let picture = picture(&scene, PICTURE.0, PICTURE.1, style);
                    let flaws = flaws(&scene, &picture, true);
                    let drawn = picture.lines().join("\n");
                    assert!(
                        flaws.is_empty(),
                        "{} {seed} {flaws:?}\n{drawn}",
                        lesson.id()
                    );
                }
            }
        }
    }
}
