package puzzleworkshop.display;

import com.vaadin.flow.component.AttachEvent;
import com.vaadin.flow.component.tabs.Tabs;

/**
 * A row of tabs. Vaadin makes the scrolling part within it focusable, which a list of tabs may not hold (WAI-ARIA 1.2,
 * required owned elements of {@code tablist}); that is taken off. On a phone the row begins where its chosen tab is seen.
 */
public class TabRow extends Tabs {

    @Override
    protected void onAttach(AttachEvent event) {
        super.onAttach(event);
        getElement().executeJs("""
                        requestAnimationFrame(() => {
                          this.shadowRoot?.querySelectorAll('div[tabindex]').forEach((part) => part.removeAttribute('tabindex'));
                          const row = this.shadowRoot?.querySelector('[part="tabs"]');
                          const chosen = this.querySelector('vaadin-tab[selected]');
                          if (row && chosen) {
                            row.scrollLeft = chosen.offsetLeft - (row.clientWidth - chosen.offsetWidth) / 2;
                          }
                        })""");
    }
}
