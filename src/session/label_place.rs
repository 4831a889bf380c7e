//! `left beam: Ay + B = 24`, `about the upper hinge: B·1.2 = 588·1.5`: the body or the point that a
//! label of a general problem names, where its sum is of another.

use super::turn::Sign;
use super::{Outcome, Session};
use crate::key::StepId;
use crate::text::{Prose, Slot};
use crate::units::Dimension;

impl Session {
    /// What is told of a sum that stands with a force in it that does not act on the body of its
    /// label, or has no moment about its point; or without the couple that every sum about it has.
    pub(super) fn other_place_told(&self, line: &str, outcome: &Outcome) -> Option<Prose> {
        let stands = matches!(outcome.sign, Sign::Right | Sign::Follows);
        let (label, sum) = line.split_once(':').filter(|_| stands)?;
        let label = label.trim().to_lowercase();
        let named = self.steps_of_sum(sum)?;
        let (key, id) = match self.body_of_label(&label) {
            Some(noun) => ("talk.label-body", self.off_body(&named, &noun)?),
            None => {
                let noun = self.noun_of_label(&label)?;
                let arm = self.without_arm(&named, &noun);
                let arm = arm.map(|id| ("talk.label-no-arm", id));
                let couple = || self.couple_left_out(&named, &noun);
                arm.or_else(|| Some(("talk.label-couple", couple()?)))?
            }
        };
        let symbol = self.key.step(id)?.symbol.shown();
        Some(self.words.say(key, &[("force", Slot::Name(symbol))]))
    }

    /// The quantities of a general problem that are named in a sum; `None` where a name of hers may
    /// be any of them.
    fn steps_of_sum(&self, sum: &str) -> Option<Vec<StepId>> {
        self.key.general.as_ref().filter(|_| sum.contains('='))?;
        let letter = |c: char| c.is_alphanumeric() || c == '_';
        let words = sum.split(|c: char| !letter(c));
        let words = words.map(|word| word.trim_start_matches(|c: char| c.is_ascii_digit()));
        let words: Vec<&str> = words.filter(|word| !word.is_empty()).collect();
        if words.iter().any(|name| self.is_hers(name)) {
            return None;
        }
        // `N*0` says that it has none.
        let close = sum.replace(char::is_whitespace, "");
        let vanishes = |id: &StepId| {
            let step = self.key.step(*id);
            let none = step.map_or_else(String::new, |step| format!("{}*0", step.symbol.typed()));
            let mut behind = close.split(none.as_str()).skip(1);
            behind.any(|rest| !rest.starts_with(|c: char| c == '.' || c.is_ascii_digit()))
        };
        let mut named = self.steps_named(sum);
        named.retain(|id| !vanishes(id));
        Some(named)
    }

    /// A force that does not act on this body.
    fn off_body(&self, named: &[StepId], noun: &String) -> Option<StepId> {
        let bodies = &self.key.general.as_ref()?.bodies;
        let elsewhere = |id: &StepId| {
            let acts_on = bodies.get(id).filter(|_| !id.is_direction());
            acts_on.is_some_and(|nouns| !nouns.contains(noun))
        };
        named.iter().copied().find(elsewhere)
    }

    /// A force of the support at a point, which has no moment about it.
    fn without_arm(&self, named: &[StepId], noun: &str) -> Option<StepId> {
        let kind = |id: StepId| self.key.heading(id).map_or("", |heading| heading.kind);
        // Two pushes of one noun may be at two places, and so may the ends of a rope.
        let pushes = self.unknowns_at(noun);
        let pushes = pushes.filter(|id| kind(*id) == "push").count();
        let force = |id: &StepId| {
            self.key
                .step(*id)
                .is_some_and(|step| step.dimension == Dimension::FORCE)
        };
        let mut here = self.unknowns_at(noun).filter(force);
        here.find(|id| pushes < 2 && kind(*id) != "pull" && named.contains(id))
    }

    /// The couple of a support that is not found yet, where what acts between two bodies is not in the
    /// sum either: about that point no other sum is without it.
    fn couple_left_out(&self, named: &[StepId], noun: &str) -> Option<StepId> {
        let between = &self.key.general.as_ref()?.between;
        let known = |id: &StepId| named.contains(id) || self.state.standing.contains_key(id);
        let is_couple = |id: &StepId| {
            let step = self.key.step(*id);
            step.is_some_and(|step| step.dimension == Dimension::MOMENT)
        };
        let couple = self.unknowns_at(noun).find(is_couple)?;
        (!known(&couple) && !between.keys().any(known)).then_some(couple)
    }

    /// The unknowns of the supports of a noun.
    fn unknowns_at(&self, noun: &str) -> impl Iterator<Item = StepId> {
        let steps = self.key.steps.iter().map(|step| step.id);
        steps.filter(move |id| {
            let heading = self.key.heading(*id);
            let here = heading.is_some_and(|heading| heading.noun.to_lowercase() == noun);
            here && id.is_unknown()
        })
    }

    /// The noun of the body that a label names, and nothing else.
    fn body_of_label(&self, label: &str) -> Option<String> {
        let general = self.key.general.as_ref()?;
        let said = self.without_article(label);
        let mut nouns = general.bodies.values().flatten();
        nouns.find(|noun| noun.to_lowercase() == said).cloned()
    }

    /// What stands behind "about" in a label.
    fn noun_of_label(&self, label: &str) -> Option<String> {
        let about = self.words.word("label.about");
        let mut about = about.split(',').map(str::trim);
        let said = about.find_map(|about| {
            let (before, said) = label.split_once(about)?;
            let apart = before.is_empty() || before.ends_with(' ');
            said.strip_prefix(' ').filter(|_| apart)
        })?;
        Some(self.without_article(said).to_owned())
    }

    fn without_article<'l>(&self, said: &'l str) -> &'l str {
        let said = said.trim();
        let (first, rest) = said.split_once(' ').unwrap_or(("", said));
        match self.is_in("general.article", first) {
            true => rest.trim(),
            false => said,
        }
    }
}
