package puzzleworkshop.sheets.board;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import puzzleworkshop.geometry.Outline;
import puzzleworkshop.geometry.RandomOutlines;
import puzzleworkshop.geometry.UsefulSizes;
import puzzleworkshop.geometry.fit.BestSheets;
import puzzleworkshop.geometry.fit.Profile;
import puzzleworkshop.geometry.fit.Remainder;
import puzzleworkshop.measure.Length;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Percent;
import puzzleworkshop.measure.Size;
import puzzleworkshop.support.Seeds;

/** Value in = value out + value scrapped, to the cent, over chains of cuts through real remainders. */
@DisplayNameGeneration(ReplaceUnderscores.class)
class CostChainProperties {

    private static final long SEED = 77;
    private static final UsefulSizes SIZES = UsefulSizes.common();

    private record Piece(Outline outline, Money cost) {}

    @ParameterizedTest
    @EnumSource(OffcutCost.class)
    void no_cent_is_lost_over_any_chain_of_cuts(OffcutCost rule) {
        RandomOutlines outlines = new RandomOutlines(SEED);
        Random random = new Random(Seeds.from(SEED));
        for (int chain = 0; chain < 40; chain++) {
            Money bought = Money.of(
                    new BigDecimal(random.nextInt(2000)).movePointLeft(2),
                    Money.of("0", "EUR").currency());
            RackRules rules = new RackRules(
                    Size.mm(2600, 1300),
                    Length.mm(0.2),
                    Length.mm(1),
                    Length.mm(0.4),
                    rule,
                    Percent.of(random.nextInt(101)),
                    false);
            Deque<Piece> rack = new ArrayDeque<>(List.of(new Piece(outlines.next(true), bought)));
            Money out = Money.zero(bought.currency());
            for (int cut = 0; cut < 8 && !rack.isEmpty(); cut++) {
                Piece piece = rack.poll();
                double w = piece.outline().bounds().longerSide().mm() * (0.2 + 0.4 * random.nextDouble());
                Size blank = Size.mm(w, w * (0.4 + 0.6 * random.nextDouble()));
                Optional<BestSheets.Ranked> place =
                        BestSheets.finest(Profile.of(piece.outline(), SIZES), blank, null, SIZES);
                if (place.isEmpty()) {
                    rack.add(piece);
                    continue;
                }
                Remainder rest =
                        Remainder.after(piece.outline(), blank, place.get().place(), rules.kerf(), SIZES);
                CostSplit split = CostSplit.after(piece.cost(), piece.outline(), blank, rest, rules);
                out = out.plus(split.blank()).plus(split.scrapped());
                int kept = 0;
                for (Remainder.Part part : rest.parts()) {
                    if (!part.isScrap()) {
                        rack.add(new Piece(part.outline(), split.offcuts().get(kept++)));
                    }
                }
                assertThat(split.offcuts()).hasSize(kept).noneMatch(Money::isNegative);
                if (rule == OffcutCost.NOTHING) {
                    assertThat(split.offcuts()).allMatch(Money::isZero);
                }
            }
            Money left = Money.sum(rack.stream().map(Piece::cost).toList(), bought.currency());
            assertThat(out.plus(left).amount())
                    .as("seed %d chain %d rule %s", SEED, chain, rule)
                    .isEqualByComparingTo(bought.amount());
        }
    }
}
