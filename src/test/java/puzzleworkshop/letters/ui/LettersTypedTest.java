package puzzleworkshop.letters.ui;

import static org.assertj.core.api.Assertions.assertThat;

import com.vaadin.browserless.SpringBrowserlessTest;
import com.vaadin.flow.component.button.Button;
import com.vaadin.flow.component.confirmdialog.ConfirmDialog;
import com.vaadin.flow.component.select.Select;
import com.vaadin.flow.component.textfield.TextArea;
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
