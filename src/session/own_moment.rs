//! `M1 = 196·2·cos 62` where the problem calls a mass m1, or where M1 is the moment of another force: a
//! moment that she names so herself.

use super::Session;
use super::own_meant::with_symbol;
use crate::key::StepId;
use crate::units::Dimension;

/// A letter that looks like M and is another, so that the name is not that of the mass.
pub(super) const OTHER_M: char = '\u{41c}';
/// What stands between the parts of a form.
const SIGNS: [char; 8] = ['+', '-', '−', '*', '·', '×', '/', '÷'];

impl Session {
    /// A line of a free working with her moments under names of their own: those that she has told,
    /// and the one that this line tells, where it is none of the mass. `None` for other lines.
    pub(super) fn with_own_moments(&self, line: &str) -> Option<String> {
        let mut way = line.to_owned();
        for name in capitals(line) {
            let own = name.replacen('M', &OTHER_M.to_string(), 1);
            let told = || match self.is_mass(name) {
                true => self.tells_moment(name, line),
                false => self.is_of_moment(name) && self.tells_another(name, line),
            };
            if self.is_own_name(&own) || told() {
                way = with_symbol(&way, name, &own);
            }
        }
        (way != line).then_some(way)
    }

    /// True for a name that only in its case is another than that of a mass.
    fn is_mass(&self, name: &str) -> bool {
        let givens = self.problem.givens().iter();
        let mut masses = givens.filter(|given| given.dimension == Dimension::MASS);
        masses.any(|mass| mass.symbol.matches(name)) && !self.is_symbol(name)
    }

    /// True for the name of the moment of a force.
    fn is_of_moment(&self, name: &str) -> bool {
        let mut steps = self.key.steps.iter();
        steps.any(|step| matches!(step.id, StepId::Moment(_)) && step.symbol.matches(name))
    }

    /// True for a line that tells under the name of one moment what is another one: they may be
    /// counted from the body on.
    fn tells_another(&self, name: &str, line: &str) -> bool {
        let told = form_told(name, line).zip(self.asked_now());
        let refused = told.filter(|(_, asked)| !self.judged(*asked, line).stands());
        let steps = self.key.steps.iter();
        let others =
            steps.filter(|step| matches!(step.id, StepId::Moment(_)) && !step.symbol.matches(name));
        let others: Vec<StepId> = others.map(|step| step.id).collect();
        refused.is_some_and(|(behind, asked)| {
            let is = |step: &StepId| {
                let found = self.judged(*step, behind);
                found.proved && found.truth.holds()
            };
            self.judged(asked, behind).stands() || others.iter().any(is)
        })
    }

    /// True for a line that tells a form of this name which is not the mass.
    fn tells_moment(&self, name: &str, line: &str) -> bool {
        let told = form_told(name, line).filter(|_| !line.contains("kg"));
        let asked = self.asked_now().filter(|_| told.is_some());
        asked.is_some_and(|asked| !self.judged(asked, line).stands())
    }
}

/// What stands behind a name that a line tells, where its first side is a form.
fn form_told<'l>(name: &str, line: &'l str) -> Option<&'l str> {
    let (head, behind) = line.split_once('=')?;
    let form = behind.split('=').next().unwrap_or(behind);
    let formed = form.trim().trim_start_matches('-').contains(SIGNS);
    (head.trim() == name && formed).then_some(behind)
}

/// The names of a line that are an M with an index, each once.
fn capitals(line: &str) -> Vec<&str> {
    let letter = |c: char| c.is_alphanumeric() || c == '_';
    let mut found: Vec<&str> = Vec::new();
    for word in line.split(|c| !letter(c)) {
        let index = word
            .strip_prefix('M')
            .map(|rest| rest.trim_start_matches('_'));
        if index.is_some_and(|index| (1..=2).contains(&index.chars().count()))
            && !found.contains(&word)
        {
            found.push(word);
        }
    }
    found
}
