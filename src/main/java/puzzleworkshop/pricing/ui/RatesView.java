package puzzleworkshop.pricing.ui;

import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.html.Paragraph;
import com.vaadin.flow.router.HasDynamicTitle;
import com.vaadin.flow.router.Menu;
import com.vaadin.flow.router.Route;
import jakarta.annotation.security.RolesAllowed;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.blocks.PageHead;
import puzzleworkshop.pricing.Pricing;
import puzzleworkshop.pricing.rates.RateBook;
import puzzleworkshop.workshop.SignedIn;

/** Rates and prices: try out, decide how a price is made, keep the price list and every figure with its day. */
@Route("rates")
@Menu(title = "pricing.title", order = 70)
@RolesAllowed("OWNER")
@StyleSheet("context://pricing.css")
public class RatesView extends Div implements HasDynamicTitle {

    public RatesView(Pricing pricing, RateBook book, Formatter figures, SignedIn signedIn) {
        addClassName("pw-page");
        PageHead head = new PageHead(getTranslation("pricing.title"), new Paragraph(getTranslation("pricing.lead")));
        WhatIfPanel whatIf = new WhatIfPanel(pricing, book, figures);
        PriceListForm list = new PriceListForm(pricing, book, figures, signedIn);
        Runnable again = () -> {
            whatIf.refresh();
            list.refresh();
        };
        add(
                head,
                whatIf,
                new RuleForm(book, figures, signedIn, again),
                list,
                new RateTable(pricing, book, figures, signedIn, again));
    }

    @Override
    public String getPageTitle() {
        return getTranslation("pricing.title");
    }
}
