package puzzleworkshop.sheets;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.beans.factory.annotation.Autowired;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.geometry.fit.Profile;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Size;
import puzzleworkshop.sheets.board.BlankWish;
import puzzleworkshop.sheets.board.BoardFacts;
import puzzleworkshop.sheets.board.Grade;
import puzzleworkshop.sheets.board.RackRules;
import puzzleworkshop.sheets.board.RackSettings;
import puzzleworkshop.sheets.find.LearnedSizes;
import puzzleworkshop.sheets.find.SheetFinder;
import puzzleworkshop.sheets.find.Suggestion;
import puzzleworkshop.support.DatabaseTest;

@DatabaseTest
@DisplayNameGeneration(ReplaceUnderscores.class)
class RackWhileComputingIT {

    private static final BlankWish A_BLANK = BlankWish.of(Size.mm(222, 172), Length.mm(3));

    @Autowired
    SheetRack rack;

    @Autowired
    SheetFinder finder;

    @Autowired
    LearnedSizes learned;

    @Autowired
    RackSettings settings;

    /** Which sizes are useful decides what an offcut is worth; a sheet must never be judged by those of before. */
    @Test
    void in_200_rounds_no_sheet_is_judged_by_useful_sizes_that_were_changed_meanwhile() throws Exception {
        for (int i = 0; i < 4; i++) {
            rack.add(
                    Outline.rectangle(Size.mm(400 + i, 300)),
                    BoardFacts.clean("birch-ply", Grade.CRAFT, Length.mm(3)),
                    Money.of("4.00", "EUR"),
                    "Robin");
        }
        int stale = 0;
        try (ExecutorService reader = Executors.newSingleThreadExecutor()) {
            for (int round = 0; round < 200; round++) {
                Future<?> early = reader.submit(() -> finder.suggest(A_BLANK));
                settings.saveStandardBlanks(List.of(Size.mm(330 + round % 7, 250), Size.mm(200, 120 + round % 3)));
                early.get();
                UsefulSizes useful = learned.sizes();
                List<Sheet> stock =
                        finder.suggest(A_BLANK).stream().map(Suggestion::sheet).toList();
                assertThat(stock).isNotEmpty();
                List<Profile> judged = finder.profiles(stock, learned.sizes());
                for (int i = 0; i < stock.size(); i++) {
                    Profile truth = Profile.of(stock.get(i).outline(), useful);
                    stale += judged.get(i).value().equals(truth.value()) ? 0 : 1;
                }
            }
        }
        assertThat(stale).as("sheets judged by sizes of before").isZero();
    }

    @Test
    void in_200_rounds_the_rules_of_the_rack_are_never_older_than_the_last_save() throws Exception {
        RackRules before = settings.rules();
        int stale = 0;
        try (ExecutorService readers = Executors.newFixedThreadPool(2)) {
            for (int round = 0; round < 200; round++) {
                Future<?> early = readers.submit(settings::rules);
                Length kerf = Length.mm(0.1 + round % 7 * 0.05);
                settings.save(new RackRules(
                        before.largest(),
                        kerf,
                        before.mostBow(),
                        before.thicknessSlack(),
                        before.offcutCost(),
                        before.share(),
                        before.sawnFirst()));
                stale += settings.rules().kerf().equals(kerf) ? 0 : 1;
                early.get();
                stale += settings.rules().kerf().equals(kerf) ? 0 : 1;
            }
        }
        assertThat(stale).as("rules older than the last save").isZero();
    }
}
