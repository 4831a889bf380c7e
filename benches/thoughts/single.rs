//! Tables 1 and 2: one mistake, typed as a form, as a bare value where it shows, or seen only in the
//! final answer.

use super::case::{Case, Share, is_family, is_mistake, place};
use super::manner::{below, number};
use super::pupil::{Wrong, work};
use leverwright::key::StepId;
use leverwright::mistakes::{Instance, Scope, typed_line};
use leverwright::session::Ranked;
use rand::rngs::ChaCha8Rng;
use std::collections::BTreeMap;

#[derive(Clone, Copy, Default)]
struct Row {
    form_family: Share,
    form_exact: Share,
    value_family: Share,
}

impl Row {
    fn add(&mut self, other: Row) {
        self.form_family.add(other.form_family);
        self.form_exact.add(other.form_exact);
        self.value_family.add(other.value_family);
    }
}

/// Table 1.
pub(super) fn typed_and_values(cases: &[Case], random: &mut ChaCha8Rng) {
    println!("\n1. One mistake where it shows: family first, and the very mistake first");
    println!(
        "{:32} {:>7} {:>10} {:>10} {:>7} {:>10}",
        "mistake", "forms", "family", "exact", "values", "family"
    );
    let (mut own, mut rest) = (BTreeMap::new(), BTreeMap::new());
    let mut missed = Vec::new();
    for case in cases {
        for made in case.made() {
            let row = own.entry(made.wrong.id()).or_default();
            by_own_arithmetic(case, made.wrong, random, row, &mut missed);
        }
        let by_hand = |id: &str| Wrong::all(&case.paper).iter().any(|wrong| wrong.id() == id);
        for made in case
            .instances
            .iter()
            .filter(|made| !by_hand(made.mistake.id))
        {
            let row = rest.entry(made.mistake.id).or_default();
            by_rewrite(case, made, row, &mut missed);
        }
    }
    tell("the twenty commonest, by the pupils' own arithmetic", &own);
    tell("the others, by the rewrites", &rest);
    for line in missed.iter().take(60) {
        println!("missed: {line}");
    }
}

fn by_own_arithmetic(
    case: &Case,
    wrong: Wrong,
    random: &mut ChaCha8Rng,
    row: &mut Row,
    missed: &mut Vec<String>,
) {
    let figures = 4 + below(random, 3) as u8;
    let (Some(right), Some(lines)) = (
        work(&case.paper, &[], figures),
        work(&case.paper, &[wrong], figures),
    ) else {
        return;
    };
    let Some(step) = super::pupil::first_apart(&right, &lines) else {
        return;
    };
    let Some(line) = lines.iter().find(|line| line.step == step) else {
        return;
    };
    // The setting of a calculator is seen in no form, only in what it shows.
    let form = match (wrong, line.value) {
        (Wrong::Radians, Some(value)) => {
            format!("{} = {}", line.form, number(random, step, value, 4))
        }
        (Wrong::Radians, None) => String::new(),
        _ => line.form.clone(),
    };
    let id = wrong.id();
    if !form.is_empty() {
        let ranked = case.session.thoughts_behind(step, &form);
        row.form_family
            .count(place(&ranked, |thought| is_family(thought, id)) == Some(0));
        row.form_exact
            .count(place(&ranked, |thought| is_mistake(thought, id)) == Some(0));
        note(case, &form, &ranked, (id, wrong_told(wrong)), missed);
    }
    if let Some((step, value)) = case.valued(&lines, step) {
        let right = case.valued(&right, step).map(|(_, value)| value);
        if right.is_some_and(|right| (right - value).abs() <= 1e-6 * right.abs()) {
            return;
        }
        let typed = number(random, step, value, 3);
        let ranked = case.session.thoughts_behind(step, &typed);
        row.value_family
            .count(place(&ranked, |thought| is_family(thought, id)) == Some(0));
    }
}

fn wrong_told(wrong: Wrong) -> String {
    format!("{wrong:?}")
}

fn by_rewrite(case: &Case, made: &Instance, row: &mut Row, missed: &mut Vec<String>) {
    let Some(line) = typed_line(&case.problem, &case.key, made, &case.sampling) else {
        return;
    };
    let id = made.mistake.id;
    // A weight taken for another's is seen where it bears that one's name.
    let exchanged = matches!((line.step, made.scope), (StepId::Weight(_), Scope::Two(..)));
    let named = |text: &str| match case.paper.name(line.step).filter(|_| exchanged) {
        Some(name) => format!("{name} = {text}"),
        None => text.to_owned(),
    };
    let expression = named(&line.expression);
    let ranked = case.session.thoughts_behind(line.step, &expression);
    row.form_family
        .count(place(&ranked, |thought| is_family(thought, id)) == Some(0));
    row.form_exact
        .count(place(&ranked, |thought| is_mistake(thought, id)) == Some(0));
    let told = format!("{:?}", made.scope);
    note(case, &expression, &ranked, (id, told), missed);
    if let Some((number, step)) = &line.number {
        let ranked = case.session.thoughts_behind(*step, &named(number));
        row.value_family
            .count(place(&ranked, |thought| is_family(thought, id)) == Some(0));
        let told = format!("{:?}", made.scope);
        note(case, &named(number), &ranked, (id, told), missed);
    }
}

/// Keeps a form or a value whose family was not named first.
fn note(
    case: &Case,
    form: &str,
    ranked: &Ranked,
    (id, made): (&str, String),
    missed: &mut Vec<String>,
) {
    if place(ranked, |thought| is_family(thought, id)) != Some(0) {
        let named: Vec<&str> = ranked.thoughts.iter().map(|one| one.id.as_str()).collect();
        missed.push(format!(
            "{id} {} `{form}` at {} ({made}): {}, named {named:?}",
            case.problem.title(),
            ranked.step.0,
            ranked.truth
        ));
    }
}

fn tell(title: &str, rows: &BTreeMap<&'static str, Row>) {
    println!("{title}");
    let mut whole = Row::default();
    let line = |name: &str, row: &Row| {
        println!(
            "{name:32} {:>7} {:>10} {:>10} {:>7} {:>10}",
            row.form_family.all,
            row.form_family.told(),
            row.form_exact.told(),
            row.value_family.all,
            row.value_family.told()
        );
    };
    for (id, row) in rows {
        line(id, row);
        whole.add(*row);
    }
    line("together", &whole);
}

/// Table 2.
pub(super) fn final_answers(cases: &[Case], random: &mut ChaCha8Rng) {
    println!("\n2. Only the final answer (the pull, three figures), one mistake");
    println!(
        "{:32} {:>7} {:>12} {:>14} {:>14}",
        "mistake", "answers", "family first", "first three", "called right"
    );
    let mut rows: BTreeMap<&'static str, [Share; 3]> = BTreeMap::new();
    for case in cases {
        let right = work(&case.paper, &[], 6).and_then(|lines| case.valued(&lines, case.pull()));
        let Some((pull, right)) = right else { continue };
        for made in case.made() {
            let lines = work(&case.paper, &[made.wrong], 4 + below(random, 3) as u8);
            let Some((_, value)) = lines.and_then(|lines| case.valued(&lines, pull)) else {
                continue;
            };
            // What gives the right pull cannot be seen in it.
            if (value - right).abs() <= 2e-4 * right.abs() {
                continue;
            }
            let typed = number(random, pull, value, 3);
            let ranked = case.session.thoughts_behind(pull, &typed);
            let id = made.wrong.id();
            let at = place(&ranked, |thought| is_family(thought, id));
            let row = rows.entry(id).or_default();
            row[0].count(at == Some(0));
            row[1].count(at.is_some());
            row[2].count(matches!(ranked.truth.as_str(), "holds" | "rounded"));
        }
    }
    let mut whole = [Share::default(); 3];
    let line = |name: &str, row: &[Share; 3]| {
        let [first, three, right] = row.map(Share::told);
        println!(
            "{name:32} {:>7} {first:>12} {three:>14} {right:>14}",
            row[0].all
        );
    };
    for (id, row) in &rows {
        line(id, row);
        for (sum, share) in whole.iter_mut().zip(row) {
            sum.add(*share);
        }
    }
    line("together", &whole);
}
