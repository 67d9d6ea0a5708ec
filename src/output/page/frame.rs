//! What every page has: head with the typeface of the charts, skip link, cautions, foot.

use maud::{DOCTYPE, Markup, PreEscaped, html};

use crate::output::cautions::{CAUTIONS, LIMITS_OF_THE_MODEL};
use crate::output::chart::FONT_RULES;

/// The style of all pages.
const STYLE: &str = include_str!("style.css");
/// The colours of light and dark, for the frame of the browser.
const PAPERS: [(&str, &str); 2] = [("light", "#ffffff"), ("dark", "#12161b")];

/// A whole page: what it is called, what it says, its own rules of style, and the script that moves it, if any.
pub fn page(title: &str, main: &Markup, rules: &str, script: &str) -> String {
    let whole = html! {
        (DOCTYPE)
        html lang="en-GB" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta name="color-scheme" content="light dark";
                @for (scheme, paper) in PAPERS {
                    meta name="theme-color" content=(paper) media=(format!("(prefers-color-scheme: {scheme})"));
                }
                // no picture of its own, and no request for one
                link rel="icon" href="data:,";
                title { (title) }
                style { (PreEscaped(FONT_RULES.as_str())) (PreEscaped(STYLE)) (PreEscaped(rules)) }
            }
            body {
                a class="skip" href="#main" { "Skip to the text" }
                main id="main" tabindex="-1" { (main) }
                footer { p { "Made by firstfill " (env!("CARGO_PKG_VERSION")) ", from runs on the machine it was made on. This page loads nothing from elsewhere." } }
                @if !script.is_empty() {
                    script { (PreEscaped(script)) }
                }
            }
        }
    };
    whole.into_string()
}

/// The part on how it was computed: what the model leaves out, and the scenarios.
pub fn computed(how: &[String], files: &[(String, String)]) -> Markup {
    html! {
        section aria-labelledby="computed" {
            h2 id="computed" { "How was this computed?" }
            @for words in how { p { (words) } }
            h3 { "Limits of the model" }
            ul { @for words in LIMITS_OF_THE_MODEL { li { (words) } } }
            @for (name, text) in files {
                h3 { "Scenario " code { (name) } }
                pre { code { (text) } }
            }
        }
    }
}

/// The cautions.
pub fn cautions() -> Markup {
    html! {
        section class="cautions" aria-labelledby="cautions" {
            h2 id="cautions" { "Cautions" }
            p { (CAUTIONS.join(" ")) }
        }
    }
}
