package puzzleworkshop.proofs.ui;

import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.button.ButtonVariant;
import com.vaadin.flow.component.dependency.StyleSheet;
import com.vaadin.flow.component.dialog.Dialog;
import com.vaadin.flow.component.html.Div;
import com.vaadin.flow.component.textfield.TextField;
import java.net.URI;
import java.util.Set;
import puzzleworkshop.display.Clipboard;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.display.PageAddress;
import puzzleworkshop.display.QrCode;
import puzzleworkshop.display.SvgBox;
import puzzleworkshop.display.blocks.Note;
import puzzleworkshop.display.blocks.SmallText;
import puzzleworkshop.proofs.Proofs;
import puzzleworkshop.proofs.Token;

/** Shows a link: to copy, and as a code to scan. */
@StyleSheet("context://proofs.css")
class LinkDialog extends Dialog {

    /** What a browser calls its own computer; from any other one such an address leads nowhere. */
    private static final Set<String> THIS_COMPUTER = Set.of("localhost", "127.0.0.1", "[::1]");

    private final TextField address = new TextField();
    private final SvgBox code = new SvgBox("proofs-code");
    private final Note onlyHere = Note.hidden(Note.Kind.WARN);
    private final transient Formatter figures;

    /** @param publicUrl where customers reach the program; empty: as this browser does */
    LinkDialog(Token token, String publicUrl, Formatter figures) {
        this.figures = figures;
        setHeaderTitle(figures.text("proofs.link.title"));
        address.setReadOnly(true);
        address.setWidthFull();
        address.setAriaLabel(figures.text("proofs.link.title"));
        address.setAutoselect(true);
        Button copy = new Button(
                figures.text("proofs.link.copy"), click -> Clipboard.copy(address, figures.text("proofs.link.copied")));
        copy.addThemeVariants(ButtonVariant.PRIMARY);
        SmallText lasts = new SmallText(figures.text("proofs.link.lasts", Proofs.LASTS.toDays()));
        Div body = new Div(address, code, onlyHere, lasts);
        body.addClassNames("pw-stack", "proofs-link");
        add(body);
        getFooter().add(new Button(figures.text("proofs.link.close"), click -> close()), copy);
        addAttachListener(
                event -> PageAddress.root(event.getUI(), publicUrl, root -> show(root + "/p/" + token.text())));
    }

    private void show(String url) {
        address.setValue(url);
        boolean thisComputer = THIS_COMPUTER.contains(URI.create(url).getHost());
        onlyHere.setText(thisComputer ? figures.text("proofs.link.only-here") : "");
        onlyHere.setVisible(thisComputer);
        code.draw(QrCode.of(url, 4).drawing(figures.text("proofs.link.code"), "proofs-code-paper", "proofs-code-ink"));
    }
}
