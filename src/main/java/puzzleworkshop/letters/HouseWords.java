package puzzleworkshop.letters;

import java.time.LocalDate;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Propagation;
import org.springframework.transaction.annotation.Transactional;
import puzzleworkshop.display.Formatter;
import puzzleworkshop.orders.Order;
import puzzleworkshop.planning.NoticeWording;
import puzzleworkshop.planning.schedule.Job.Wait;

/** What planning tells customers, in the owner's wording, kept among the letters of the order. */
@Component
class HouseWords implements NoticeWording {

    private static final Set<Wait.For> MATERIAL = Set.of(Wait.For.PAPER, Wait.For.FILM, Wait.For.BOARD);

    private final Wordings wordings;
    private final FieldValues values;
    private final Letters letters;
    private final Formatter figures;

    HouseWords(Wordings wordings, FieldValues values, Letters letters, Formatter figures) {
        this.wordings = wordings;
        this.values = values;
        this.letters = letters;
        this.figures = figures;
    }

    @Override
    public Words words(Order order, Optional<Wait.For> waitsFor, Optional<LocalDate> instead) {
        LetterKind kind = kind(waitsFor, instead);
        Map<LetterField, String> all = new EnumMap<>(LetterField.class);
        all.putAll(values.of(order, kind));
        instead.ifPresent(day -> all.put(LetterField.NEW_DAY, figures.day(day)));
        waitsFor.ifPresent(what -> {
            if (MATERIAL.contains(what)) {
                all.put(LetterField.MATERIAL, figures.text("letters.material." + what.name()));
            } else {
                all.put(LetterField.NEEDED, figures.text("letters.needed." + what.name()));
            }
        });
        Wording.Filled filled = wordings.of(kind).filled(all);
        return new Words(filled.subject(), filled.body());
    }

    @Override
    @Transactional(propagation = Propagation.MANDATORY)
    public void told(Order order, Optional<Wait.For> waitsFor, Optional<LocalDate> instead, Words words) {
        letters.keepTold(new Draft(
                order.id(),
                kind(waitsFor, instead),
                order.customer().contact(),
                words.subject(),
                words.body(),
                Set.of(),
                List.of()));
    }

    private static LetterKind kind(Optional<Wait.For> waitsFor, Optional<LocalDate> instead) {
        if (instead.isPresent()) {
            return LetterKind.NEW_DAY;
        }
        return waitsFor.map(what -> switch (what) {
                    case PICTURE -> LetterKind.PICTURE_WANTED;
                    case APPROVAL -> LetterKind.APPROVAL_WANTED;
                    case PAYMENT -> LetterKind.PAYMENT_AWAITED;
                    case PAPER, FILM, BOARD -> LetterKind.MATERIAL_AWAITED;
                })
                .orElse(LetterKind.ON_TIME);
    }
}
