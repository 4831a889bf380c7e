//! What a session remembers.

use super::estimate::Guesses;
use super::freely_seen::Seen;
use super::own_words::ToldName;
use super::turn::{Course, LineView, Progress};
use super::worked::Example;
use crate::diagnosis::{Diagnosis, Leaning};
use crate::judge::statement::{Said, Way, Where};
use crate::judge::{Judgement, Own, OwnName, Standing};
use crate::key::{Key, StepId};
use crate::problem::ForceId;
use crate::text::{Prose, Symbol};
use std::collections::{BTreeMap, BTreeSet};

/// A line that does not hold and still waits for what the learner does about it.
#[derive(Clone)]
pub(super) struct Open {
    pub(super) judgement: Judgement,
    pub(super) diagnosis: Diagnosis,
    /// The line's number.
    pub(super) number: usize,
}

/// A force named but not yet placed.
#[derive(Clone, Copy)]
pub(super) struct Pending {
    pub(super) force: ForceId,
    pub(super) place: Option<Where>,
    pub(super) way: Option<Way>,
    /// It was placed where it does not act: its place is asked, though it may go unsaid.
    pub(super) misplaced: bool,
}

/// How often a mistake was named, and of which lines.
#[derive(Clone, Default)]
pub(super) struct Told {
    /// In all.
    pub(super) times: usize,
    /// Without a "perhaps".
    pub(super) flatly: usize,
    /// The numbers of the lines, each once.
    pub(super) lines: Vec<usize>,
}

/// A working whose lines come in any order.
#[derive(Clone)]
pub(super) struct Freely {
    /// How the session stood when it began.
    pub(super) base: Box<State>,
    /// Its lines in force: number, text, and the truth that was told.
    pub(super) lines: Vec<(usize, String, &'static str)>,
    /// Those whose wrong value a later line put right, with the wrong ones that she had in them:
    /// nothing of them stays in force.
    pub(super) void: BTreeMap<usize, Vec<(StepId, Own)>>,
    /// Those that followed and do no longer, with the values that she had in them.
    pub(super) fallen: BTreeMap<usize, Vec<(StepId, Own)>>,
    /// Steps of which the line was shown, each with the number of the line that came next.
    pub(super) shown: Vec<(usize, StepId)>,
    /// What was said of forces and pivot before its first line.
    pub(super) said: Seen,
    /// What each line speaks of.
    pub(super) seen: BTreeMap<usize, Seen>,
    /// What was told by names alone, and by which.
    pub(super) told_by: BTreeMap<StepId, Vec<StepId>>,
    /// The line that is answered now, as typed.
    pub(super) now: String,
}

/// Everything that changes in a session.
#[derive(Clone)]
pub(super) struct State {
    pub(super) lines: Vec<LineView>,
    pub(super) next_number: usize,
    pub(super) standing: Standing,
    /// Wrong values of the learner's own that later lines took the place of, oldest first.
    pub(super) earlier: Vec<(StepId, Own)>,
    pub(super) own_names: Vec<(Symbol, OwnName)>,
    /// Names of hers that were told in words.
    pub(super) told_names: Vec<ToldName>,
    /// True while a line is looked at with all that its numbers may stand for.
    pub(super) wide: bool,
    pub(super) carried: Vec<(StepId, Key)>,
    /// Steps done or passed, and the index of the line that did it.
    pub(super) reached: BTreeMap<StepId, (Progress, Option<usize>)>,
    /// Steps gone on with though their line does not hold, and whether it gave a value. Of one in
    /// dispute that gave none nothing is told.
    pub(super) gone_on: BTreeMap<StepId, bool>,
    /// Steps that the learner's own way did without.
    pub(super) done_without: BTreeSet<StepId>,
    /// Steps whose value was told: taking them back does not untell it.
    pub(super) told: BTreeSet<StepId>,
    pub(super) open: Option<Open>,
    /// What was found out about each line that does not hold.
    pub(super) judged: BTreeMap<usize, Open>,
    /// The mistakes that the learner has made and corrected.
    pub(super) leaning: Leaning,
    /// Those that the line being answered has put right.
    pub(super) confirmed: Vec<&'static str>,
    /// The earlier value that was asked for to tell two thoughts apart: one a problem.
    pub(super) probe: Option<StepId>,
    pub(super) hint_stage: u8,
    pub(super) named: Vec<ForceId>,
    /// The index of the line that named each, or passed over it.
    pub(super) named_at: BTreeMap<ForceId, usize>,
    pub(super) pending: Vec<Pending>,
    /// A place or a way said before it was clear of which force.
    pub(super) loose: Option<Said>,
    /// How many lines in a row led nowhere at the first two steps.
    pub(super) astray: u8,
    pub(super) pivot_said: bool,
    /// A point other than the guided one, said once.
    pub(super) other_pivot: Option<f64>,
    pub(super) course: Course,
    /// How often each mistake was named, flatly or not, and whether a hint came before a step was
    /// right.
    pub(super) mistakes: BTreeMap<&'static str, Told>,
    pub(super) hinted: BTreeMap<StepId, u8>,
    pub(super) wrong: BTreeMap<StepId, usize>,
    /// The numbers of the lines that did not hold.
    pub(super) wrong_lines: Vec<usize>,
    /// What was estimated before the numbers.
    pub(super) guesses: Guesses,
    /// Present while no step is asked.
    pub(super) freely: Option<Freely>,
    /// On what the verdict on each line rests.
    pub(super) bases: BTreeMap<usize, Prose>,
    /// In which sense a free working counts what may act both ways, and since which line.
    pub(super) senses: BTreeMap<StepId, (bool, usize)>,
    /// Steps told in names, each with what stands in its form and is not found yet.
    pub(super) pending_names: Vec<(StepId, Vec<StepId>)>,
    /// Steps told by a right form in names alone: of their values nothing is shown.
    pub(super) in_names: BTreeSet<StepId>,
    /// What of the problem is shown as an example.
    pub(super) example: Example,
}

impl State {
    pub(super) fn new() -> State {
        State {
            lines: Vec::new(),
            next_number: 1,
            standing: Standing::new(),
            earlier: Vec::new(),
            own_names: Vec::new(),
            told_names: Vec::new(),
            wide: false,
            carried: Vec::new(),
            reached: BTreeMap::new(),
            gone_on: BTreeMap::new(),
            done_without: BTreeSet::new(),
            told: BTreeSet::new(),
            open: None,
            judged: BTreeMap::new(),
            leaning: Leaning::default(),
            confirmed: Vec::new(),
            probe: None,
            hint_stage: 0,
            named: Vec::new(),
            named_at: BTreeMap::new(),
            pending: Vec::new(),
            loose: None,
            astray: 0,
            pivot_said: false,
            other_pivot: None,
            course: Course::On,
            mistakes: BTreeMap::new(),
            hinted: BTreeMap::new(),
            wrong: BTreeMap::new(),
            wrong_lines: Vec::new(),
            guesses: Guesses::default(),
            freely: None,
            bases: BTreeMap::new(),
            senses: BTreeMap::new(),
            pending_names: Vec::new(),
            in_names: BTreeSet::new(),
            example: Example::default(),
        }
    }

    /// Takes over what was said in another state of the same session: hints given and mistakes
    /// named are not unsaid.
    pub(super) fn keep_told(&mut self, told: State) {
        self.guesses = told.guesses;
        self.told = told.told;
        self.mistakes = told.mistakes;
        self.hinted = told.hinted;
        self.wrong = told.wrong;
        self.wrong_lines = told.wrong_lines;
        self.leaning = told.leaning;
        self.confirmed = told.confirmed;
        self.probe = told.probe;
    }

    /// Takes a force as named by the line that is being answered.
    pub(super) fn name(&mut self, force: ForceId) {
        if !self.named.contains(&force) {
            self.named.push(force);
            self.named_at.insert(force, self.lines.len());
        }
    }

    /// Takes back what one line named; the forces, in the order in which they were named.
    pub(super) fn unname(&mut self, line: usize) -> Vec<ForceId> {
        let at = |force: &ForceId| self.named_at.get(force) == Some(&line);
        let (gone, kept) = self.named.iter().partition(|force| at(force));
        self.named = kept;
        if let Some(view) = self.lines.get_mut(line) {
            view.standing = false;
        }
        gone
    }

    /// Lets a value stand; a wrong one that it takes the place of is remembered.
    pub(super) fn put(&mut self, step: StepId, mut own: Own) {
        // A relation told once more takes no value away.
        let valued = |before: &Own| before.right && !before.relation && own.right;
        if own.relation && self.standing.get(&step).is_some_and(valued) {
            return;
        }
        self.in_names.remove(&step);
        // Told anew by a form, it keeps the number that she has for it.
        let before = self.standing.get(&step).filter(|before| before.right);
        if own.right && own.typed.is_none() {
            own.typed = before.and_then(|before| before.typed);
        }
        // Put again, it counts again.
        self.earlier
            .retain(|(id, old)| *id != step || old.function != own.function);
        if let Some(before) = self.standing.insert(step, own)
            && !before.right
        {
            self.earlier.push((step, before));
        }
    }
}
