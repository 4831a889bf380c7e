//! Words beside a formula: "so the mast weighs Wb = …", "= 343 N, all the weight", "T = 726 no
//! 627 N". A line that is not understood is read without those that carry nothing. What would
//! change its truth (a way, a "not", a share, a line to measure from) is never passed over.

use super::Session;
use crate::reading::read;
use crate::units::find_unit;

/// The most words that are passed over before a formula.
const MOST_BEFORE: usize = 7;
/// The most words that are passed over behind one.
const MOST_BEHIND: usize = 16;
/// Words of the catalogue that change what is said, wherever they stand.
const WEIGHTY: &[&str] = &[
    "beside.weighty",
    "statement.above",
    "statement.across",
    "statement.along",
    "statement.anticlockwise",
    "statement.below",
    "statement.clockwise",
    "statement.down",
    "statement.from",
    "statement.function",
    "statement.horizontal",
    "statement.left",
    "statement.lifts",
    "statement.no",
    "statement.or",
    "statement.part",
    "statement.pushes",
    "statement.right",
    "statement.share-half",
    "statement.share-quarter",
    "statement.share-third",
    "statement.than",
    "statement.up",
    "statement.vertical",
];

impl Session {
    /// A line without what carries nothing beside its formula; places before what is left out stay
    /// as they are. `None` where there is nothing such, or where the rest cannot be read either.
    pub(super) fn without_words_beside(&self, line: &str) -> Option<String> {
        let mut kept = line.to_owned();
        if let Some(mended) = self.corrected(&kept) {
            kept = mended;
        }
        if let Some(end) = note_of_figures(&self.words, &kept) {
            kept.truncate(end);
        }
        if kept.matches(')').count() == kept.matches('(').count() + 1
            && kept.trim_end().ends_with(')')
        {
            kept.truncate(kept.trim_end().len() - 1);
        }
        if let Some(rest) = self.behind_acts(&kept) {
            kept = rest;
        }
        if let Some(of_all) = unit_of_all(&kept) {
            kept = of_all;
        }
        if kept != line && self.is_readable(&kept) {
            return Some(kept);
        }
        self.without_words(&kept)
    }

    /// True if a line can be read, whatever it says.
    pub(super) fn is_readable(&self, line: &str) -> bool {
        read(line, self.names().vocabulary()).is_ok()
    }

    /// True for a definition of a name of her own.
    fn defines_a_name(&self, line: &str) -> bool {
        let readings = read(line, self.names().vocabulary());
        let new = |name: &str| self.is_short_name(name) && !self.is_symbol(name);
        // A small h is no H.
        let head = line
            .split_once('=')
            .is_some_and(|(head, _)| new(head.trim()));
        readings.is_ok_and(|all| head || all.iter().all(|reading| reading.defines.is_some()))
    }

    /// True if a line can be read, or all the statements that commas part in it.
    fn are_readable(&self, line: &str) -> bool {
        let mut parts = line.split(", ");
        self.is_readable(line) || parts.all(|part| part.contains('=') && self.is_readable(part))
    }

    /// The line without the fewest words at its ends that lets it be read.
    fn without_words(&self, line: &str) -> Option<String> {
        let starts = self.starts(line);
        let ends = self.ends(line);
        let mut all: Vec<(usize, usize, usize)> = Vec::new();
        for (before, start) in starts.iter().enumerate() {
            for (behind, (end, _)) in ends.iter().enumerate() {
                if start < end {
                    all.push((before + behind, before, behind));
                }
            }
        }
        all.sort_unstable();
        all.iter().skip(1).find_map(|(_, before, behind)| {
            let (start, (end, way)) = (starts[*before], &ends[*behind]);
            let mut formula = line[start..*end].to_owned();
            // "= −75.3 N, so it pushes up": what the sign means is said in words.
            let last = formula.rfind('=').map_or(0, |sign| sign + 1);
            let number = formula[last..].trim_start();
            let minus = number.chars().next().filter(|c| matches!(c, '-' | '−'));
            let concludes = self.concludes(&line[*end..]);
            if let Some(minus) = minus.filter(|_| concludes && !way.is_empty()) {
                let at = formula.len() - number.len();
                let first = formula.find('=').unwrap_or(0);
                if first + 1 < last {
                    // A sum before it has that sign too: both are said.
                    let size = number[minus.len_utf8()..].trim_end_matches([',', ' ']);
                    let said = format!(", {} = {size}", formula[..first].trim());
                    formula.truncate(formula.trim_end_matches([',', ' ']).len());
                    formula.push_str(&said);
                } else {
                    formula.replace_range(at..at + minus.len_utf8(), " ");
                }
            }
            let kept = format!("{}{formula}{way}", " ".repeat(start));
            self.are_readable(&kept).then_some(kept)
        })
    }

    /// Where a formula may begin: at the start, and behind words that may be passed over there.
    fn starts(&self, line: &str) -> Vec<usize> {
        let mut starts = vec![0];
        let Some(equals) = line.find('=') else {
            return starts;
        };
        let words = words_of(&line[..equals]);
        for (count, (_, end, word)) in words.iter().enumerate().take(MOST_BEFORE) {
            let apart = word.ends_with([',', ':']);
            let said = &line[..*end];
            let bare = word.trim_end_matches([',', ':']).to_lowercase();
            let first = count == 0 && apart && self.is_in("beside.taken-back", &bare);
            if !(first || is_plain_word(word) && self.is_of_a_sentence(&bare)) {
                break;
            }
            let rest = line[*end..equals].trim_start();
            let begins = rest.trim_end();
            // Words run on into the name that they go with, or a comma parts them from it.
            let bound = !apart && (self.is_in("beside.binds", &bare) || self.binds(said));
            let named = !begins.is_empty() && self.is_known_name(begins);
            let weighs = !first && self.weighs(&without_first(said, first));
            if !bound
                && !weighs
                && (named || apart && !begins.is_empty())
                && self.fits(said, begins)
            {
                starts.push(line.len() - line[*end..].trim_start().len());
            }
        }
        starts
    }

    /// Where a formula may end, and the way that is said behind it: at the end, and before words
    /// that may be passed over there.
    fn ends(&self, line: &str) -> Vec<(usize, String)> {
        let mut ends = vec![(line.len(), String::new())];
        let Some(from) = line.find(|c: char| matches!(c, '=' | '≈') || c.is_ascii_digit()) else {
            return ends;
        };
        let named = line.split_once('=').map(|(head, _)| head.trim());
        let named = named.and_then(|head| head.split_whitespace().last());
        let asked = self.asked().and_then(|id| self.key.step(id));
        let asked = asked.map_or_else(String::new, |step| step.symbol.typed());
        let name = named.unwrap_or(&asked);
        let words = words_of(&line[from..]);
        let comma = line[from..].find(", ").map(|at| &line[..from + at]);
        let own = comma.is_some_and(|formula| self.defines_a_name(formula));
        for (start, _, word) in words.iter().rev().take(MOST_BEHIND) {
            if !is_plain_word(word) {
                break;
            }
            let said = &line[from + start..];
            let long = said.split_whitespace().any(|word| word.chars().count() > 2);
            let before = line[..from + start].trim_end();
            let parted = before.trim_end_matches("//").trim_end().len();
            let first = word.trim_matches(['(', ',', '.']).to_lowercase();
            // "Above the mast" is not "above".
            let last = before.split_whitespace().last().unwrap_or_default();
            if self.weighs(last) || self.is_in("beside.binds", &last.to_lowercase()) {
                continue;
            }
            let begins = before.ends_with([',', ';', '.'])
                || parted < before.len()
                || word.starts_with(['(', '/'])
                || self.is_in("beside.begins", &first)
                || self.is_in("own.is", &first) && self.has_word(said, "own.kinds");
            // What is told of a name of her own changes no value.
            let of_own = own && comma.is_some_and(|formula| formula.len() == parted - 1);
            let plain = long && (of_own || !self.weighs(said)) && self.fits(said, name);
            if begins && (self.is_reason(said) || plain) {
                ends.push((parted, String::new()));
            } else if let Some(way) = self.only_way(said) {
                ends.push((parted, format!(" {way}")));
            }
        }
        ends
    }

    /// The calculation in a line of words: what stands between the words before its first `=` and
    /// those behind the last.
    pub(super) fn formula_in_words<'l>(&self, line: &'l str) -> Option<&'l str> {
        let is_word = |word: &str| {
            let bare = word.trim_end_matches([',', ':', '=']);
            is_plain_word(bare) && (self.is_of_a_sentence(&bare.to_lowercase()))
        };
        let first = line.find('=')?;
        let last = line.rfind('=')?;
        let head = words_of(&line[..first]);
        let start = match head.iter().rposition(|(_, _, word)| is_word(word)) {
            // "Arm of W = …": a name for it in words.
            Some(at)
                if head[at + 1..]
                    .iter()
                    .all(|(_, _, word)| is_plain_word(word)) =>
            {
                first + 1
            }
            Some(at) => head[at].1,
            None => return None,
        };
        let tail = words_of(&line[last..]);
        let end = tail.iter().position(|(_, _, word)| is_word(word));
        let end = end.map_or(line.len(), |at| last + tail[at].0);
        let formula = line[start..end].trim().trim_end_matches([',', ';']);
        formula.contains('=').then_some(formula)
    }

    /// True if words say something that changes the truth of what they stand beside.
    pub(super) fn weighs(&self, said: &str) -> bool {
        let general = self.is_general() && self.has_word(said, "beside.weighty-general");
        general || WEIGHTY.iter().any(|key| self.has_word(said, key))
    }

    /// True if the words before a name make another quantity of it: "half of T".
    fn binds(&self, said: &str) -> bool {
        self.has_word(said, "beside.another-quantity")
    }

    /// "Because the beam is level": a reason, which is not judged.
    fn is_reason(&self, said: &str) -> bool {
        let first = said.split_whitespace().next().unwrap_or_default();
        let long = said.split_whitespace().count() > 2;
        long && self.is_in("beside.reason", &first.to_lowercase())
            && !self.has_word(said, "statement.no")
    }

    /// True for words that draw a conclusion: "so it points up".
    fn concludes(&self, said: &str) -> bool {
        let marks = |c: char| c.is_whitespace() || matches!(c, ',' | ';' | '.');
        let said = said.trim_start_matches(marks);
        let first = said.split_whitespace().next().unwrap_or_default();
        self.is_in("beside.concludes", &first.to_lowercase())
    }

    /// The way that words say and nothing else: "so it really pushes up".
    fn only_way(&self, said: &str) -> Option<String> {
        let small = said.to_lowercase();
        let words: Vec<&str> = small
            .split(|c: char| c.is_whitespace() || matches!(c, ',' | '.'))
            .filter(|word| !word.is_empty() && !self.is_in("beside.around-way", word))
            .collect();
        let way = ["left", "right", "up", "down"];
        let found = way.into_iter().find(|way| {
            let listed = |word: &&str| self.is_in(&format!("statement.{way}"), word);
            !words.is_empty() && words.iter().all(listed)
        })?;
        Some(self.words.word(&format!("solve.{found}")))
    }

    /// True if no word before a name is that of another force: "the dummy Wb" where Wb is the
    /// mast's.
    fn fits(&self, said: &str, name: &str) -> bool {
        let titles = |own: bool| {
            let steps = self.key.asked();
            let forces = steps.filter(|step| step.id.is_weight() || step.id.is_pull());
            let of: Vec<String> = forces
                .filter(|step| step.symbol.matches(name) == own)
                .map(|step| self.title(step.id).to_lowercase())
                .collect();
            of.join(" ")
        };
        let (own, others) = (titles(true), titles(false));
        let stands = |text: &str, word: &str| text.split_whitespace().any(|known| known == word);
        let small = said.to_lowercase();
        let mut words = small.split(|c: char| !c.is_alphabetic());
        own.is_empty() || !words.any(|word| stands(&others, word) && !stands(&own, word))
    }

    /// `R acts at x = 2.08 m left of the hinge`: what is told of where it acts.
    fn behind_acts(&self, line: &str) -> Option<String> {
        let mut words = words_of(line).into_iter();
        let (_, _, name) = words.next()?;
        let (_, end, acts) = words.next()?;
        let acts = self.is_in("beside.acts", &acts.to_lowercase());
        if !acts || !self.is_known_name(name) {
            return None;
        }
        let (_, at, word) = words.next()?;
        let end = if word == "at" { at } else { end };
        let rest = line[end..].trim_start();
        let told = rest.starts_with(char::is_alphabetic) && rest.contains('=');
        told.then(|| format!("{}{rest}", " ".repeat(line.len() - rest.len())))
    }

    /// `T = 726 no 627 N`: what stands last counts; the line without what it takes the place of.
    fn corrected(&self, line: &str) -> Option<String> {
        let small = line.to_lowercase();
        if small.len() != line.len() {
            return None;
        }
        let known = self.words.word("beside.correction");
        known.split(',').map(str::trim).find_map(|word| {
            let at = small.rfind(&format!(" {word} "))?;
            let after = at + word.len() + 2;
            let after = after + line[after..].len() - line[after..].trim_start().len();
            let first = line[..at].trim_end_matches([' ', ',', '.', ';', '…']);
            let from = first.rfind(['=', '≈']).map_or(0, |sign| sign + 1);
            let number = |text: &str| {
                let text = text.trim_start_matches(['-', '−', ' ']);
                text.starts_with(|c: char| c.is_ascii_digit())
            };
            let both = number(&first[from..]) && number(&line[after..]);
            let whole = !line[after..].contains(['=', '≈']);
            (both && whole && self.is_readable(&first[from..])).then(|| {
                format!(
                    "{}{}{}",
                    &line[..from],
                    " ".repeat(after - from),
                    &line[after..]
                )
            })
        })
    }

    /// True if a word or phrase of a list of the catalogue stands among these words.
    pub(super) fn has_word(&self, said: &str, key: &str) -> bool {
        let plain: String = said
            .to_lowercase()
            .replace(['\u{2019}', '\''], "")
            .chars()
            .map(|c| {
                if c.is_alphanumeric() || matches!(c, '↑' | '↓' | '←' | '→') {
                    c
                } else {
                    ' '
                }
            })
            .collect();
        let plain = format!(
            " {} ",
            plain.split_whitespace().collect::<Vec<_>>().join(" ")
        );
        let known = self.words.word(key);
        let mut known = known.split(',').map(str::trim);
        known.any(|phrase| plain.contains(&format!(" {} ", phrase.replace('-', " "))))
    }

    /// True if a word is of a list of the catalogue.
    pub(super) fn is_in(&self, key: &str, word: &str) -> bool {
        self.words
            .word(key)
            .split(',')
            .any(|known| known.trim() == word)
    }

    /// True for a word that is no letter of a formula.
    fn is_of_a_sentence(&self, bare: &str) -> bool {
        bare.chars().count() > 2 || self.is_in("beside.small", bare)
    }

    /// True for a name, a product of names or a number with a name.
    fn is_known_name(&self, text: &str) -> bool {
        let starts = |c: char| c.is_alphabetic() || c.is_ascii_digit();
        text.contains(char::is_alphabetic) && text.starts_with(starts) && self.is_readable(text)
    }
}

/// The words of a text: where each begins and ends, and the word.
fn words_of(text: &str) -> Vec<(usize, usize, &str)> {
    let place = |word: &str| word.as_ptr() as usize - text.as_ptr() as usize;
    let words = text.split_whitespace();
    let placed = words.map(|word| (place(word), place(word) + word.len(), word));
    placed.collect()
}

/// A text without its first word, where that is said.
fn without_first(said: &str, first: bool) -> String {
    let rest = said
        .split_once(char::is_whitespace)
        .map_or("", |(_, rest)| rest);
    (if first { rest } else { said }).to_owned()
}

/// True for letters alone, perhaps with marks of a sentence around them.
fn is_plain_word(word: &str) -> bool {
    let marks = [',', '.', ';', ':', '!', '(', ')', '"', '/'];
    let bare = word.trim_matches(marks);
    let letter = |c: char| c.is_alphabetic() || matches!(c, '\'' | '’' | '-' | '_');
    word == "//" || !bare.is_empty() && bare.chars().all(letter)
}

/// Where a note on figures at the end of a line begins: `(3 s.f.)`, `to 3 sf`.
fn note_of_figures(words: &crate::text::Words, line: &str) -> Option<usize> {
    let text = line.trim_end_matches([' ', ')', '.']).to_lowercase();
    if !line.is_char_boundary(text.len()) {
        return None;
    }
    let notes = words.word("beside.figures");
    let before = notes
        .split(',')
        .filter_map(|note| text.strip_suffix(note.trim()))
        .min_by_key(|rest| rest.len())?;
    let digit = before.trim_end();
    let rest = digit.strip_suffix(|c: char| c.is_ascii_digit())?;
    let rest = rest.trim_end();
    let to = words.word("beside.to-figures");
    let to = to.split(',').map(str::trim);
    let without_to = |text: &'_ str| to.clone().find_map(|to| Some(text.strip_suffix(to)?.len()));
    let bracket = rest.strip_suffix('(');
    let open = bracket.or_else(|| {
        let before = &rest[..without_to(rest)?];
        before.ends_with(' ').then_some(before)
    })?;
    let open = open.trim_end();
    let open = &open[..without_to(open).unwrap_or(open.len())];
    Some(
        open.trim_end()
            .trim_end_matches(['(', ','])
            .trim_end()
            .len(),
    )
}

/// `H² = 1.5² + 1.6² (kN²)`: the unit in brackets is that of the whole sum before it.
fn unit_of_all(line: &str) -> Option<String> {
    let line = line.trim_end().trim_end_matches('.');
    let inner = line.strip_suffix([')', ']'])?;
    let at = inner.rfind(['(', '['])?;
    let unit = inner[at + 1..].trim();
    find_unit(unit)?;
    let (head, sum) = inner[..at].rsplit_once('=')?;
    Some(format!("{head}=({}) {unit}", sum.trim()))
}
