//! What a session gives, in the manner that the learner has chosen. Lines that were typed stay as
//! they were typed.

use crate::session::{LineView, Sign, Turn, View};
use crate::text::{Manner, Prose};

/// A view in a manner.
pub fn shown(mut view: View, manner: &Manner) -> View {
    if *manner == Manner::default() {
        return view;
    }
    let all = |told: &mut Vec<Prose>| {
        for prose in told {
            *prose = manner.prose(prose);
        }
    };
    for text in [&mut view.title, &mut view.statement, &mut view.caution] {
        *text = manner.text(text);
    }
    all(&mut view.scene);
    all(&mut view.summary);
    for worked in &mut view.keys {
        worked.title = manner.prose(&worked.title);
        for line in &mut worked.lines {
            line.told = manner.prose(&line.told);
        }
    }
    all(&mut view.choices);
    for step in &mut view.steps {
        step.title = manner.text(&step.title);
        step.result = step.result.as_deref().map(|result| manner.text(result));
    }
    for line in &mut view.lines {
        show_line(line, manner);
    }
    for place in &mut view.pivots {
        place.name = manner.text(&place.name);
        place.told = manner.prose(&place.told);
    }
    view.question = manner.prose(&view.question);
    view.example = manner.prose(&view.example);
    for name in &mut view.names {
        name.meaning = manner.text(&name.meaning);
        name.value = name.value.as_deref().map(|value| manner.text(value));
    }
    view
}

/// An answer in a manner. What a journal keeps of it is as it was.
pub fn shown_turn(mut turn: Turn, manner: &Manner) -> Turn {
    for line in std::iter::once(&mut turn.line).chain(&mut turn.shown) {
        show_line(line, manner);
    }
    turn.question = manner.prose(&turn.question);
    turn
}

fn show_line(line: &mut LineView, manner: &Manner) {
    if line.sign == Sign::Shown {
        line.text = manner.text(&line.text);
    }
    line.about = manner.text(&line.about);
    line.verdict = manner.text(&line.verdict);
    line.message = manner.prose(&line.message);
    line.reading = line.reading.as_deref().map(|reading| manner.text(reading));
    for hint in &mut line.hints {
        *hint = manner.prose(hint);
    }
}
