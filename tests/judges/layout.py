"""How a page lies on a screen: nothing sideways, nothing that jumps, nothing too small for a thumb."""

from playwright.sync_api import Page

# Gloves on, arm stretched. Common practice, no source; WCAG 2.2 (2.5.5, level AAA) asks for 44 px.
THUMB_PX = 48


def shifts(page: Page) -> list[str]:
    """List what jumped since the page was opened.

    By the W3C's Layout Instability API, which keeps its entries; the value is the share of the screen that jumped.
    """
    found: list[tuple[float, str]] = page.evaluate(
        """() => new Promise((done) => {
            const jumped = [];
            new PerformanceObserver((list) => {
                for (const entry of list.getEntries()) {
                    const nodes = (entry.sources || []).map((source) => source.node).filter(Boolean);
                    jumped.push([entry.value, nodes.map((node) => node.id || node.nodeName).join(' ')]);
                }
            }).observe({type: 'layout-shift', buffered: true});
            requestAnimationFrame(() => setTimeout(() => done(jumped), 50));
        })"""
    )
    return [f"{share:.3f} of the screen jumped: {who}" for share, who in found]


def without_a_place(page: Page) -> list[str]:
    """List the pictures that do not say how wide and high they are before they have come."""
    found: list[str] = page.evaluate(
        """() => [...document.images]
            .filter((image) => !(image.hasAttribute('width') && image.hasAttribute('height')))
            .map((image) => image.outerHTML.slice(0, 120))"""
    )
    return found


def sideways(page: Page) -> list[str]:
    """List what makes the page wider than the screen, or passes the edge where lines end outside a scrolling box."""
    found: list[str] = page.evaluate(
        """() => {
            const root = document.documentElement, width = root.clientWidth, found = [];
            const leftwards = getComputedStyle(root).direction === 'rtl';
            if (root.scrollWidth > width) {
                found.push(`the page is ${root.scrollWidth} px wide on a screen of ${width} px`);
            }
            const boxed = (element) => {
                for (let up = element.parentElement; up && up !== document.body; up = up.parentElement) {
                    if (getComputedStyle(up).overflowX !== 'visible') return true;
                }
                return false;
            };
            for (const element of document.body.querySelectorAll('*')) {
                const box = element.getBoundingClientRect();
                const drawn = box.width > 1 && box.height > 1 && element.checkVisibility();
                const beyond = leftwards ? -box.left : box.right - width;
                if (drawn && beyond > 1 && !boxed(element)) {
                    const start = element.outerHTML.slice(0, 120);
                    found.push(`reaches ${Math.round(beyond)} px beyond the edge: ${start}`);
                }
            }
            return found;
        }"""
    )
    return found


def small_targets(page: Page, least_px: int) -> list[str]:
    """List the controls narrower or lower than a thumb needs; a control's label counts as part of it."""
    found: list[str] = page.evaluate(
        """(least) => {
            const controls = [
                'a[href]', 'button', 'input:not([type=hidden])', 'select', 'textarea', 'summary',
                '[role=button]', '[tabindex="0"]',
            ];
            const found = [];
            for (const control of document.querySelectorAll(controls.join())) {
                if (!control.checkVisibility()) continue;
                const parts = [control, ...(control.labels || [])];
                const boxes = parts.map((part) => part.getBoundingClientRect());
                const offThePage = (box) => box.right <= 0 || box.bottom + scrollY <= 0;
                if (boxes.every(offThePage)) continue;  // waits there for the keyboard
                const width = Math.max(...boxes.map((box) => box.width));
                const height = Math.max(...boxes.map((box) => box.height));
                if (Math.min(width, height) < least - 0.01) {
                    const start = control.outerHTML.slice(0, 120);
                    found.push(`${width.toFixed(1)} x ${height.toFixed(1)} px: ${start}`);
                }
            }
            return found;
        }""",
        least_px,
    )
    return found
