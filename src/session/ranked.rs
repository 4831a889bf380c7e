//! The thoughts that may lie behind a line, ranked, for those who diagnose a sheet of paper.
//!
//! It is the session that ranks, so a line means here what it means in practice: the same judge, the
//! same mistakes, the same words.

use super::ranked_slips::asked_of_slip;
use super::speak::slip_told;
use super::state::Open;
use super::written_out::{Formulas, Hers};
use super::{Outcome, Session, Sign};
use crate::diagnosis::{Because, Diagnosis, Named, Probe, Voice, diagnose, probe};
use crate::hint::{hint, spoken_force};
use crate::judge::{Judgement, Remark, Truth};
use crate::key::{Key, Rule, StepId};
use crate::mistakes::{Instance, Mistake, Scope, Skill};
use crate::text::{Prose, Slot};

/// So many thoughts are told at most.
const MOST: usize = 3;
/// A thought with a smaller share than this is not worth telling.
const LEAST_SHARE: f64 = 0.02;
/// The share of a right value in too few figures, where no mistake gives that number: it may be
/// another thing as well (common practice, no source).
const EVEN: f64 = 0.5;
/// The share of g = 10 m/s² where a number alone is a value with it, and that of too few figures
/// where it is that too (common practice, no source).
const TEN: f64 = 0.65;
const FEW: f64 = 0.3;

/// What speaks for a thought.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Speaks {
    /// The typed form is the mistake's.
    Form,
    /// The typed form, and the ratio in it.
    Ratio,
    /// A unit that was typed.
    Unit,
    /// The form holds and its sum does not.
    Sum,
    /// The number is what the mistake makes of these earlier lines of the learner's own.
    OwnLines(Vec<usize>),
    /// Only the number.
    Value,
}

/// A thought that explains a line.
#[derive(Clone, Debug, PartialEq)]
pub struct Thought {
    /// The mistake, or the kind of slip, as one stable word.
    pub id: String,
    /// Its family, as one stable word; none for a slip.
    pub family: Option<&'static str>,
    /// It in a few words.
    pub name: String,
    /// Its family in a few words.
    pub family_name: Option<String>,
    /// Of which force, or of how many.
    pub of: Option<String>,
    /// The step in which it was made, as its stable word and in a few words.
    pub made_at: Option<(String, String)>,
    /// True where the typed form proves it.
    pub flat: bool,
    /// What speaks for it.
    pub speaks: Speaks,
    /// Its share of the weight among all that was considered.
    pub share: f64,
    /// What the learner would have written, and what is right there.
    pub formulas: Option<(Formulas, Formulas)>,
    /// What it gives at the step that the line is about.
    pub gives: Option<String>,
    /// Other mistakes, each with its family, that agree with it here whatever the numbers.
    pub alike: Vec<(&'static str, &'static str)>,
}

/// What to ask the learner next.
#[derive(Clone, Debug, PartialEq)]
pub struct Ask {
    /// The question.
    pub question: Prose,
    /// For a value that is asked: which value speaks for which of the thoughts, by their places in
    /// the list.
    pub speaks: Vec<(String, Vec<usize>)>,
}

/// A line with the thoughts that may lie behind it, likeliest first.
#[derive(Clone, Debug, PartialEq)]
pub struct Ranked {
    /// The number of the line in its working.
    pub line: Option<usize>,
    /// The step that it was held against, as its stable word and in a few words.
    pub step: (String, String),
    /// The kind of verdict.
    pub sign: Sign,
    /// The verdict as one stable word.
    pub truth: String,
    /// The verdict in a word or two.
    pub verdict: String,
    /// What the tutor says of it.
    pub said: Prose,
    /// At most three.
    pub thoughts: Vec<Thought>,
    /// True where the line shows all of them at once; else one of them is likely.
    pub together: bool,
    /// The share of another thing altogether.
    pub other: f64,
    /// What to ask next; nothing of a line that holds.
    pub ask: Option<Ask>,
}

impl Session {
    /// The step that somebody means by this name: its stable word, the symbol of its quantity, or
    /// its title.
    pub fn step_called(&self, name: &str) -> Option<StepId> {
        let folded = name.trim().to_lowercase();
        let called = |step: &&crate::key::Step| {
            let title = self.title(step.id).to_lowercase();
            let symbol = step.symbol.typed();
            self.step_name(step.id).to_lowercase() == folded
                || step.symbol.matches(name.trim())
                || symbol.to_lowercase() == folded
                // `Wbp` for `Wbperp`, as in a line.
                || symbol.to_lowercase() == format!("{folded}erp")
                || (!title.is_empty() && title == folded)
        };
        // What is asked is meant before what is only recognised.
        let valued = |step: &&crate::key::Step| step.rule != Rule::Statement;
        let asked = self.key.asked().filter(valued).find(called);
        let any = || self.key.steps.iter().filter(valued).find(called);
        asked.or_else(any).map(|step| step.id)
    }

    /// The steps that can be named, by the symbols of their quantities or their stable words.
    pub fn steps_to_call(&self) -> Vec<String> {
        let asked = self.key.asked();
        let valued = asked.filter(|step| step.rule != Rule::Statement);
        let named = valued.map(|step| match self.key.balance(step.id) {
            Some(_) => self.step_name(step.id),
            None => step.symbol.typed(),
        });
        named.collect()
    }

    /// The unknown that the problem is mostly about: the pull of a lesson, else what is asked last.
    pub fn main_step(&self) -> Option<StepId> {
        let last = || self.key.asked().last().map(|step| step.id);
        match self.is_general() {
            true => last(),
            false => self.key.unknown().or_else(last),
        }
    }

    /// The thoughts behind one answer off a sheet of paper, of whose working nothing is known.
    pub fn thoughts_behind(&self, step: StepId, answer: &str) -> Ranked {
        let mut alone = self.clone();
        while let Some(said @ (StepId::Forces | StepId::Pivot)) = alone.asked() {
            alone.pass(said);
        }
        alone.state.judged.clear();
        alone.before.clear();
        // Nobody is there to be asked.
        alone.state.probe = Some(step);
        let number = alone.state.next_number;
        let outcome = alone.answer(step, answer);
        let outcome = alone.part_of_pull(step, answer).unwrap_or(outcome);
        let open = alone.state.judged.remove(&number);
        let open = alone.looked_at_again(step, answer, &outcome).or(open);
        alone.rank(step, None, &outcome, open.as_ref())
    }

    /// A number for a part of the pull: on a sheet the pull was found before it.
    fn part_of_pull(&mut self, step: StepId, answer: &str) -> Option<Outcome> {
        let pull = self.key.unknown().filter(|_| !self.is_general())?;
        let mut tried = self.judged_anew(step, answer);
        if !tried.remarks.contains(&Remark::LeaveLetter) {
            return None;
        }
        let named = match answer.contains('=') {
            true => answer.to_owned(),
            false => format!("{} = {answer}", self.key.step(step)?.symbol.typed()),
        };
        let told = self.judged_anew(pull, &named);
        if told.target == step && told.truth.holds() {
            return Some(self.answer_judged(step, told));
        }
        tried.truth = Truth::DoesNotHold;
        tried.remarks.clear();
        Some(self.answer_judged(step, tried))
    }

    /// A number alone that was not called wrong, as one that is: an angle that is another one of the
    /// problem, or a value with too few figures to be the right one. Of both a teacher wants to know
    /// which thought may be behind them.
    fn looked_at_again(&self, step: StepId, answer: &str, outcome: &Outcome) -> Option<Open> {
        let another = outcome.sign == Sign::Noted && step.is_angle();
        let few = outcome.truth == "too-few-figures";
        if !another && !few {
            return None;
        }
        let mut judgement = self.judged_anew(step, answer);
        let (names, own) = (self.names(), self.own_values());
        let board = self.board(&names, &own);
        let number = judgement.evidence.number?;
        let is_of_step = judgement.target == step && judgement.evidence.alone;
        let right = board.right(step)?[0];
        // What holds is no exchange.
        if !is_of_step || (number.value - right).abs() <= 0.005 * right.abs() {
            return None;
        }
        judgement.truth = Truth::DoesNotHold;
        let diagnosis = diagnose(&board, &judgement, &self.instances);
        let unexplained = diagnosis.named.is_empty() && diagnosis.beside.most() < LEAST_SHARE;
        if few && unexplained {
            return None;
        }
        Some(Open {
            judgement,
            diagnosis,
            number: self.state.next_number,
        })
    }

    /// The thoughts behind each line of a working in any order.
    pub fn thoughts_in(&self, lines: &[String]) -> Vec<Ranked> {
        let mut free = self.clone();
        let _ = free.begin_freely();
        let mut ranked = Vec::new();
        for line in lines {
            let turn = free.submit(line);
            let number = turn.line.number;
            let open = number.and_then(|number| free.state.judged.get(&number).cloned());
            let asked = free.asked_now().unwrap_or(StepId::MomentSum);
            let outcome = Outcome {
                sign: turn.line.sign,
                truth: "",
                ..Outcome::talk(turn.line.message.clone())
            };
            let mut told = free.rank(asked, number, &outcome, open.as_ref());
            told.truth = turn.kept.truth;
            told.verdict = turn.line.verdict;
            if open.is_none() {
                told.step.1 = turn.line.about;
                told.step.0 = turn.kept.progress.first().cloned().unwrap_or_default();
            }
            ranked.push(told);
        }
        ranked
    }

    fn rank(
        &self,
        asked: StepId,
        line: Option<usize>,
        outcome: &Outcome,
        open: Option<&Open>,
    ) -> Ranked {
        let step = open.map_or(asked, |open| open.judgement.target);
        let mut ranked = Ranked {
            line,
            step: (self.step_name(step), self.title(step)),
            sign: outcome.sign,
            truth: outcome.truth.to_owned(),
            verdict: self.words.word(outcome.verdict),
            said: self.without_offer(&outcome.message),
            thoughts: Vec::new(),
            together: false,
            other: 0.0,
            ask: None,
        };
        let may_be = matches!(outcome.sign, Sign::Wrong | Sign::Incomplete | Sign::Noted);
        let Some(open) = open.filter(|_| may_be) else {
            return ranked;
        };
        let (judgement, diagnosis) = (&open.judgement, &open.diagnosis);
        ranked.thoughts = self.thoughts(judgement, diagnosis);
        let flat = ranked.thoughts.iter().all(|thought| thought.flat);
        ranked.together = diagnosis.together && flat && ranked.thoughts.len() > 1;
        if ranked.together {
            ranked.thoughts.iter_mut().for_each(|one| one.share = 1.0);
        }
        let shares = ranked.thoughts.iter().map(|thought| thought.share);
        ranked.other = (1.0 - shares.sum::<f64>()).max(0.0);
        ranked.ask = Some(self.ask_next(step, judgement, diagnosis, &ranked.thoughts));
        ranked
    }

    /// What was said, without what a learner at the keyboard may do about it.
    fn without_offer(&self, said: &Prose) -> Prose {
        let offer = self.offer().to_string();
        let said_all = said.to_string();
        match said_all.split_once(&offer) {
            Some((before, after)) => {
                let kept = [before.trim_end(), after.trim_start()];
                Prose::plain(kept.join(" ").trim_end())
            }
            None => said.clone(),
        }
    }

    /// What explains a line, likeliest first: what the line itself shows, then mistakes and slips by
    /// their shares.
    fn thoughts(&self, judgement: &Judgement, diagnosis: &Diagnosis) -> Vec<Thought> {
        if diagnosis.component_for_pull {
            return vec![self.slip("component-for-pull", Speaks::Form, 1.0)];
        }
        let pen = diagnosis.pen_slip && !diagnosis.slip;
        match slip_told(judgement, diagnosis) {
            Some("sum") if !pen => return vec![self.slip("sum", Speaks::Sum, 1.0)],
            Some("figures") if judgement.evidence.alone => {
                return vec![self.slip("figures", Speaks::Value, EVEN)];
            }
            Some("gravity") if judgement.evidence.alone => {
                let gravity = self.slip("gravity", Speaks::Value, TEN);
                let mut thoughts = vec![self.with_what_slipped(gravity, judgement)];
                if judgement.evidence.ten_or_few {
                    thoughts.push(self.slip("figures", Speaks::Value, FEW));
                }
                return thoughts;
            }
            Some(kind) if kind != "sum" => return vec![self.slip(kind, Speaks::Form, 1.0)],
            _ => {}
        }
        let named = diagnosis.named.iter();
        let mut thoughts: Vec<Thought> = named
            .filter(|named| named.share >= LEAST_SHARE)
            .map(|named| self.thought_of(judgement, named))
            .collect();
        thoughts.extend(self.slips(judgement, &diagnosis.beside, LEAST_SHARE));
        thoughts.sort_by(|one, other| other.share.total_cmp(&one.share));
        thoughts.truncate(MOST);
        thoughts
    }

    fn thought_of(&self, judgement: &Judgement, named: &Named) -> Thought {
        let instance = &self.instances[named.instance];
        let mistake = instance.mistake;
        let family = format!("family.{}.name", mistake.family);
        let family = self.words.has(&family).then(|| self.words.word(&family));
        let made_at = self.made_at(instance, judgement.target);
        let hers = self.hers_behind(judgement, named, made_at);
        Thought {
            id: mistake.id.to_owned(),
            family: Some(mistake.family),
            name: self.mistake_called(mistake),
            family_name: family,
            of: self.covered(instance, judgement.target),
            made_at: Some((self.step_name(made_at), self.title(made_at))),
            flat: named.voice == Voice::Flat,
            speaks: self.speaks(judgement, named, &hers),
            share: named.share,
            formulas: self.formulas(instance, made_at, &hers),
            gives: self.gives(named.key(&self.instances), judgement, &hers),
            alike: self.alike(instance, &named.alike),
        }
    }

    /// A mistake in a few words.
    fn mistake_called(&self, mistake: &Mistake) -> String {
        let name = format!("mistake.{}.name", mistake.id);
        match self.words.has(&name) {
            true => self.words.word(&name),
            false => self.words.word(&format!("general.name.{}", mistake.id)),
        }
    }

    /// The other mistakes that cannot be told from one here, each once.
    fn alike(&self, instance: &Instance, places: &[usize]) -> Vec<(&'static str, &'static str)> {
        let mut alike: Vec<(&'static str, &'static str)> = Vec::new();
        for place in places {
            let mistake = self.instances[*place].mistake;
            let told = (mistake.id, mistake.family);
            if mistake.id != instance.mistake.id && !alike.contains(&told) {
                alike.push(told);
            }
        }
        alike
    }

    /// Of which force a mistake speaks, or of how many.
    fn covered(&self, instance: &Instance, target: StepId) -> Option<String> {
        let several = match instance.scope {
            Scope::Weights => Some("diagnose.of.weights"),
            Scope::Everywhere => Some("diagnose.of.all"),
            _ => None,
        };
        if let Some(key) = several {
            return Some(self.words.word(key));
        }
        let force = spoken_force(instance, target)?;
        Some(self.problem.force(force)?.symbol.shown())
    }

    /// The step whose rule the mistake rewrites: the one that the line is about, where the mistake
    /// shows first, or further up, where that is.
    fn made_at(&self, instance: &Instance, target: StepId) -> StepId {
        let rule = |key: &Key, id: StepId| key.step(id).map(|step| step.rule.clone());
        let differs = |id: StepId| rule(&instance.key, id) != rule(&self.key, id);
        let first = || {
            let mut steps = self.key.steps.iter().map(|step| step.id);
            steps.find(|id| differs(*id))
        };
        // A part of the hinge's force comes from the balance of forces along its axis.
        let sum = target.along().map_or(target, StepId::ForceSum);
        let mut here = [target, sum, instance.shows_at].into_iter();
        let here = here.find(|id| differs(*id));
        here.or_else(first).unwrap_or(instance.shows_at)
    }

    fn speaks(&self, judgement: &Judgement, named: &Named, hers: &Hers) -> Speaks {
        let evidence = &judgement.evidence;
        let skill = self.instances[named.instance].mistake.skill;
        let of_ratio = matches!(skill, Skill::Angles | Skill::Resolving | Skill::Reactions);
        match named.because {
            Because::Form if evidence.angled && of_ratio => Speaks::Ratio,
            Because::Form => Speaks::Form,
            Because::Unit => Speaks::Unit,
            Because::Sum => Speaks::Sum,
            Because::Value if hers.lines.is_empty() || evidence.number.is_none() => Speaks::Value,
            Because::Value => Speaks::OwnLines(hers.lines.clone()),
        }
    }

    /// The next thing to ask: a value in which the thoughts differ, else what makes one look.
    fn ask_next(
        &self,
        step: StepId,
        judgement: &Judgement,
        diagnosis: &Diagnosis,
        thoughts: &[Thought],
    ) -> Ask {
        let (names, own) = (self.names(), self.own_values());
        let board = self.board(&names, &own);
        let slip = thoughts.first().filter(|first| first.family.is_none());
        if let Some(key) = slip.and_then(|slip| asked_of_slip(&slip.id)) {
            return Ask {
                question: self.words.say(key, &[]),
                speaks: Vec::new(),
            };
        }
        if let Some(found) = probe(&board, judgement.target, &self.instances, diagnosis) {
            return self.value_asked(&found, diagnosis, thoughts);
        }
        if judgement.evidence.wrong_angle.is_some() && (slip.is_some() || thoughts.is_empty()) {
            return Ask {
                question: self.words.say("hint.other-angle.look", &[]),
                speaks: Vec::new(),
            };
        }
        let named = diagnosis.named.first().filter(|_| slip.is_none());
        let instance = named.map(|named| &self.instances[named.instance]);
        Ask {
            question: hint(&self.words, &self.case(), step, instance, None, 1),
            speaks: Vec::new(),
        }
    }

    fn value_asked(&self, found: &Probe, diagnosis: &Diagnosis, thoughts: &[Thought]) -> Ask {
        let mut speaks: Vec<(String, Vec<usize>)> = Vec::new();
        for (named, value) in diagnosis.named.iter().zip(&found.values) {
            let id = self.instances[named.instance].mistake.id;
            let at = thoughts
                .iter()
                .position(|thought| thought.id == id && thought.share == named.share);
            let Some(at) = at else { continue };
            let told = self.told_value(found.step, *value);
            match speaks.iter_mut().find(|(value, _)| *value == told) {
                Some((_, places)) => places.push(at),
                None => speaks.push((told, vec![at])),
            }
        }
        let slots = [("step", Slot::Word(self.title(found.step)))];
        Ask {
            question: self.words.say("diagnose.ask.value", &slots),
            speaks,
        }
    }
}
