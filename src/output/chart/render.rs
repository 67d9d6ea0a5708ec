//! From figure to files: one SVG text, and a PNG that is that very text rendered.

use std::fmt::Write as _;
use std::sync::{Arc, LazyLock};

use plotters::prelude::IntoDrawingArea;
use resvg::{tiny_skia, usvg};

use super::backend::{SvgPage, escaped};
use super::draw::draw;
use super::figure::{Figure, PAGE};
use super::fonts::{FACES, FAMILY};
use super::pack::packed;

/// Pixels of the PNG per pixel of the page.
const ZOOM: f32 = 2.0;

/// Why a text could not be rendered.
#[derive(Debug, thiserror::Error)]
pub enum RenderError {
    /// The text is not an SVG.
    #[error("the chart's SVG cannot be read: {0}")]
    Svg(#[from] usvg::Error),
    /// The page has no size, or is too large for the memory of an image.
    #[error("the chart's page of {0} × {1} pixels cannot be drawn")]
    Size(u32, u32),
    /// The image could not be packed.
    #[error("the chart's PNG cannot be written: {0}")]
    Png(String),
}

/// The figure as SVG text that stands alone: both faces inside, a title and a description for
/// those who hear it.
pub fn svg(figure: &Figure) -> String {
    let (width, height) = PAGE;
    let title = escaped(&figure.title);
    let description = escaped(&figure.description());
    let mut text = format!(
        r#"<svg xmlns="http://www.w3.org/2000/svg" width="{width}" height="{height}" viewBox="0 0 {width} {height}" role="img" aria-label="{title}" font-family="{FAMILY}" stroke-linejoin="round">
<title>{title}</title>
<desc>{description}</desc>
<style>{}</style>
"#,
        *FONT_RULES
    );
    let page = SvgPage::new(PAGE, &mut text).into_drawing_area();
    // the page only appends to a text, which cannot fail
    draw(page, figure).unwrap_or_else(|error| match error {
        plotters::drawing::DrawingAreaErrorKind::BackendError(never) => {
            unreachable!("writing to memory failed: {never}")
        }
        other => unreachable!("the page was lent to nobody else: {other}"),
    });
    text.push_str("</svg>\n");
    text
}

/// An SVG text of this module rendered at two pixels each, as PNG bytes.
///
/// # Errors
/// When the text is no SVG or its page cannot be held in memory.
pub fn png(svg: &str) -> Result<Vec<u8>, RenderError> {
    let tree = usvg::Tree::from_str(svg, &OPTIONS)?;
    let size = tree.size();
    let (width, height) = (
        (size.width() * ZOOM).round() as u32,
        (size.height() * ZOOM).round() as u32,
    );
    let mut image =
        tiny_skia::Pixmap::new(width, height).ok_or(RenderError::Size(width, height))?;
    image.fill(tiny_skia::Color::WHITE);
    let zoom = tiny_skia::Transform::from_scale(ZOOM, ZOOM);
    resvg::render(&tree, zoom, &mut image.as_mut());
    packed(image).map_err(|error| RenderError::Png(error.to_string()))
}

/// How SVG text is read: with our two faces and no other.
static OPTIONS: LazyLock<usvg::Options<'static>> = LazyLock::new(|| {
    let mut fonts = usvg::fontdb::Database::new();
    for face in FACES {
        fonts.load_font_data(face.ttf().to_vec());
    }
    usvg::Options {
        font_family: FAMILY.to_string(),
        fontdb: Arc::new(fonts),
        ..usvg::Options::default()
    }
});

/// The rules that give browsers both faces.
pub static FONT_RULES: LazyLock<String> = LazyLock::new(|| {
    let mut rules = String::new();
    for face in FACES {
        let (weight, data) = (face.weight(), base64(face.woff2()));
        let _ = write!(
            rules,
            "@font-face{{font-family:{FAMILY};font-weight:{weight};src:url(data:font/woff2;base64,{data}) format('woff2')}}"
        );
    }
    rules
});

/// Bytes as letters (RFC 4648, section 4).
fn base64(bytes: &[u8]) -> String {
    const LETTERS: &[u8; 64] = b"ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789+/";
    let mut text = String::with_capacity(bytes.len().div_ceil(3) * 4);
    for three in bytes.chunks(3) {
        let byte = |n: usize| u32::from(three.get(n).copied().unwrap_or(0));
        let bits = byte(0) << 16 | byte(1) << 8 | byte(2);
        for n in 0..4 {
            let letter = LETTERS[(bits >> (18 - 6 * n) & 63) as usize];
            text.push(if n <= three.len() {
                letter as char
            } else {
                '='
            });
        }
    }
    text
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn base64_agrees_with_the_test_vectors_of_rfc_4648() {
        let pairs = [
            ("f", "Zg=="),
            ("fo", "Zm8="),
            ("foo", "Zm9v"),
            ("foobar", "Zm9vYmFy"),
        ];
        for (plain, coded) in pairs {
            assert_eq!(base64(plain.as_bytes()), coded);
        }
    }

    #[test]
    fn what_is_no_svg_is_refused() {
        assert!(png("no picture").is_err());
    }
}
