package puzzleworkshop.letters;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.BeanFactory;
import org.springframework.beans.factory.annotation.Autowired;
import puzzleworkshop.access.AsPerson;
import puzzleworkshop.delivery.PackedOrders;
import puzzleworkshop.delivery.Parcel;
import puzzleworkshop.delivery.ParcelJourney;
import puzzleworkshop.delivery.Parcels;
import puzzleworkshop.delivery.returns.Complaint.PostageBy;
import puzzleworkshop.delivery.returns.Complaint.Reason;
import puzzleworkshop.delivery.returns.Complaints;
import puzzleworkshop.delivery.returns.Complaints.Report;
import puzzleworkshop.delivery.returns.Remedies;
import puzzleworkshop.delivery.returns.Remedies.Terms;
import puzzleworkshop.measure.BookingKey;
import puzzleworkshop.measure.Refused;
import puzzleworkshop.orders.Order;
import puzzleworkshop.support.DatabaseTest;
import puzzleworkshop.workshop.Stage;

/** What customers read of their parcel: which letter comes first, and what a letter does to the parcel. */
@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class ParcelLettersIT {

    private static final String WHO = "Robin";

    @Autowired
    BeanFactory beans;

    @Autowired
    Letters letters;

    @Autowired
    Parcels parcels;

    @Autowired
    ParcelJourney journey;

    @Autowired
    Complaints complaints;

    @Autowired
    Remedies remedies;

    private PackedOrders packed;

    @BeforeEach
    void signed_in() {
        packed = new PackedOrders(beans);
        AsPerson.owner(WHO);
    }

    @AfterEach
    void sign_out() {
        AsPerson.nobody();
    }

    @Test
    void who_collects_is_told_that_it_is_ready_and_who_gets_a_parcel_that_it_is_on_its_way() {
        Order collected = packed.one("Bo Lind", "Collection");
        assertThat(letters.fitting(collected.id()))
                .startsWith(LetterKind.READY_TO_COLLECT)
                .doesNotContain(LetterKind.ON_ITS_WAY, LetterKind.COLLECT_REMINDER);
        Parcel waits = parcels.pack(List.of(collected.id()), WHO);
        journey.ready(waits.id(), WHO);
        assertThat(letters.fitting(collected.id())).contains(LetterKind.COLLECT_REMINDER);
        journey.collected(BookingKey.fresh(), waits.id(), WHO, "test");
        assertThat(letters.fitting(collected.id()))
                .startsWith(LetterKind.THANK_YOU)
                .doesNotContain(LetterKind.ON_ITS_WAY);

        Order sent = packed.one("Ada Reed", "Parcel");
        assertThat(letters.fitting(sent.id()))
                .startsWith(LetterKind.ON_ITS_WAY)
                .doesNotContain(LetterKind.READY_TO_COLLECT);
        Parcel parcel = parcels.pack(List.of(sent.id()), WHO);
        journey.send(BookingKey.fresh(), parcel.id(), Optional.empty(), WHO, "test");
        assertThat(letters.fitting(sent.id())).startsWith(LetterKind.ON_ITS_WAY);
        journey.delivered(parcel.id(), WHO);
        assertThat(letters.fitting(sent.id())).startsWith(LetterKind.THANK_YOU);
    }

    @Test
    void what_lies_in_one_parcel_is_told_in_one_letter() {
        List<Order> two = packed.of("Fay Hill", "Parcel", 2);
        Parcel parcel = parcels.pack(two.stream().map(Order::id).toList(), WHO);
        journey.send(BookingKey.fresh(), parcel.id(), Optional.of("00 340 434"), WHO, "test");
        assertThat(parcels.byTracking(" 00 340 434\n")).as("as it is scanned").hasSize(1);
        Draft draft = letters.draft(two.getFirst().id(), LetterKind.ON_ITS_WAY, Map.of());
        assertThat(draft.body())
                .contains("your puzzle " + two.getFirst().number())
                .contains("In the same parcel: " + two.getLast().number() + ".");
        Order alone = packed.one("Gus Hill", "Parcel");
        assertThat(letters.draft(alone.id(), LetterKind.ON_ITS_WAY, Map.of()).body())
                .doesNotContain("same parcel");
    }

    @Test
    void a_customer_counts_as_reminded_once_the_letter_is_kept_and_not_when_it_is_collected_already() {
        Order order = packed.one("Cy Moor", "Collection");
        Parcel parcel = parcels.pack(List.of(order.id()), WHO);
        journey.ready(parcel.id(), WHO);
        Draft draft = letters.draft(order.id(), LetterKind.COLLECT_REMINDER, Map.of());
        assertThat(draft.body()).contains(order.number()).contains("waits for you since");
        assertThat(parcels.get(parcel.id()).remindedAt()).as("only looked at").isEmpty();
        letters.byHand(BookingKey.fresh(), draft);
        assertThat(parcels.get(parcel.id()).remindedAt()).isPresent();

        journey.collected(BookingKey.fresh(), parcel.id(), WHO, "test");
        assertThatThrownBy(() -> letters.byHand(BookingKey.fresh(), draft))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("not-to-collect");
        assertThat(letters.of(order.id())).hasSize(1);
    }

    @Test
    void what_was_decided_about_a_complaint_is_the_first_letter_until_it_is_written() {
        Order order = packed.one("Di Orr", "Parcel");
        beans.getBean(puzzleworkshop.bench.Bench.class)
                .tick(BookingKey.fresh(), List.of(order.id()), Stage.HAND_OVER, WHO, "test");
        long id = complaints.report(order.id(), new Report(Reason.CHARRED, Stage.CUT, "brown"), WHO);
        assertThat(letters.fitting(order.id())).doesNotContain(LetterKind.COMPLAINT_ANSWER);
        remedies.remake(
                BookingKey.fresh(), id, new Terms(PostageBy.WORKSHOP, Optional.empty(), "It takes a week."), WHO);
        assertThat(letters.fitting(order.id())).startsWith(LetterKind.COMPLAINT_ANSWER);
        Draft draft = letters.draft(order.id(), LetterKind.COMPLAINT_ANSWER, Map.of());
        assertThat(draft.body()).contains("We make your puzzle again").contains("It takes a week.");
        letters.byHand(BookingKey.fresh(), draft);
        assertThat(letters.fitting(order.id()))
                .contains(LetterKind.COMPLAINT_ANSWER)
                .satisfies(kinds -> assertThat(kinds.getFirst()).isNotEqualTo(LetterKind.COMPLAINT_ANSWER));
    }
}
