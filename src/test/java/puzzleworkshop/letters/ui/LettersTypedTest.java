package puzzleworkshop.letters.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.checkbox.Checkbox;
import com.vaadin.flow.component.confirmdialog.ConfirmDialog;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.IntegerField;
import com.vaadin.flow.component.textfield.TextArea;
import com.vaadin.flow.component.textfield.TextField;
import java.util.List;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.security.test.context.support.WithMockUser;
import puzzleworkshop.letters.LetterKind;
import puzzleworkshop.orders.Order;
import puzzleworkshop.papers.SoldOrders;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.support.Nobody;

/** Words that somebody has typed are not replaced unless they say so. */
@DatabaseTest
@WithMockUser(username = "Robin", roles = "OWNER")
@DisplayNameGeneration(ReplaceUnderscores.class)
class LettersTypedTest extends SpringBrowserlessTest {

    @Autowired
    BeanFactory beans;

    @Autowired
    WritingDesk desk;

    @Test
    void another_kind_of_letter_asks_before_it_takes_typed_words() {
        desk.open(order(), List.of(LetterKind.ON_TIME, LetterKind.THANK_YOU), () -> {});
        String proposed = body().getValue();
        choose(LetterKind.THANK_YOU);
        assertThat(body().getValue()).as("nothing was typed").isNotEqualTo(proposed);
        test(body()).setValue("My own words");
        choose(LetterKind.ON_TIME);
        assertThat(body().getValue()).isEqualTo("My own words");
        test(find(ConfirmDialog.class).single()).cancel();
        assertThat(kind().getValue()).isEqualTo(LetterKind.THANK_YOU);
        assertThat(body().getValue()).isEqualTo("My own words");
        choose(LetterKind.ON_TIME);
        test(find(ConfirmDialog.class).single()).confirm();
        assertThat(body().getValue()).isEqualTo(proposed);
    }

    @Test
    void a_link_made_late_leaves_typed_words_as_they_are() {
        desk.open(order(), List.of(LetterKind.PROOF_READY), () -> {});
        test(body()).setValue("Dear Ada, I liked our talk.\n\n" + body().getValue());
        ((LetterDialog) find(com.vaadin.flow.component.dialog.Dialog.class).single()).linkAt("https://puzzles.example");
        assertThat(body().getValue())
                .startsWith("Dear Ada, I liked our talk.")
                .containsOnlyOnce("https://puzzles.example/p/");
    }

    @Test
    void a_wording_that_is_not_saved_is_asked_for_before_another_is_shown() {
        navigate(LettersView.class);
        test(body()).setValue("Not saved yet");
        choose(LetterKind.THANK_YOU);
        assertThat(body().getValue()).isEqualTo("Not saved yet");
        test(find(ConfirmDialog.class).single()).cancel();
        assertThat(kind().getValue()).isEqualTo(LetterKind.QUOTE);
        test(find(Button.class).withText("Save this wording").single()).click();
        choose(LetterKind.THANK_YOU);
        assertThat(body().getValue()).as("saved: nothing to ask").isNotEqualTo("Not saved yet");
    }

    @Test
    void what_is_wrong_with_the_mail_server_stays_said_beside_its_field() {
        navigate(LettersView.class);
        IntegerField port = find(IntegerField.class).withCaption("Port").single();
        port.setValue(70_000);
        test(save()).click();
        assertThat(port.isInvalid()).isTrue();
        assertThat(port.getErrorMessage()).startsWith("A port is a number from 1 to 65,535");
        port.setValue(587);
        find(Checkbox.class)
                .withCaption("Letters can be sent by the program")
                .single()
                .setValue(true);
        test(save()).click();
        assertThat(port.isInvalid()).isFalse();
        TextField server = find(TextField.class).all().stream()
                .filter(TextField::isInvalid)
                .findFirst()
                .orElseThrow();
        assertThat(server.getLabel()).isEqualTo("Mail server (SMTP)");
    }

    /** Of the mail server: beside the way to try it. */
    private Button save() {
        return (Button) find(Button.class)
                .withText("Try the connection")
                .single()
                .getParent()
                .orElseThrow()
                .getChildren()
                .findFirst()
                .orElseThrow();
    }

    private Order order() {
        return Nobody.does(() -> new SoldOrders(beans).confirmed("Ada Reed", 1));
    }

    private TextArea body() {
        return find(TextArea.class).all().getFirst();
    }

    @SuppressWarnings("unchecked")
    private Select<LetterKind> kind() {
        return find(Select.class).all().stream()
                .filter(select -> select.getValue() instanceof LetterKind)
                .findFirst()
                .orElseThrow();
    }

    private void choose(LetterKind wanted) {
        kind().setValue(wanted);
    }
}
