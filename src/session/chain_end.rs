//! `T = 350.1 N = Hx`: a chain that ends in another name than it began with.

use super::Session;
use crate::judge::{Judgement, Truth};
use crate::key::StepId;

impl Session {
    /// A refused chain whose last side is a name: the chain before it, and the number told of that
    /// name. `None` for other lines, and where one of the two does not hold.
    pub(super) fn with_name_last(
        &mut self,
        asked: StepId,
        line: &str,
        found: &Judgement,
    ) -> Option<Judgement> {
        let refused = found.truth == Truth::DoesNotHold;
        let (before, last) = line.rsplit_once('=').filter(|_| refused)?;
        let (_, number) = before.rsplit_once('=')?;
        let name = last.trim().trim_start_matches(['-', '−', '–']).trim();
        if !self.is_symbol(name) || !number.trim().starts_with(|c: char| c.is_ascii_digit()) {
            return None;
        }
        // Of a wrong value of hers nothing is told by it.
        let first = self.beside_right_alone(|session| session.judged_anywhere(asked, before));
        let sign = if name == last.trim() { "" } else { "-" };
        let told = format!("{name} = {sign}{}", number.trim());
        let told = self.judged_by_itself(asked, &told);
        let is_told = told.truth.holds() && told.names.is_none();
        (first.stands() && is_told).then(|| Judgement {
            layout: found.layout.clone(),
            ..told
        })
    }
}
