package puzzleworkshop.display;

import com.vaadin.flow.component.UI;
import java.time.Duration;
import java.util.concurrent.CancellationException;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * Works out, beside a screen, the answer to what stands on its form. Only the answer to the latest question is shown: of
 * an older one nothing comes to the screen, not even when it was ready a moment before somebody typed on.
 *
 * @param <A> what is worked out
 */
public final class LatestAnswer<A> {

    /** Works an answer out; it may end with a {@link CancellationException} once it is outdated. */
    @FunctionalInterface
    public interface Work<A> {
        A answer(BooleanSupplier outdated);
    }

    private final AtomicLong question = new AtomicLong();
    private final Duration pause;

    /** @param pause whoever types asks again within this time; only the last of their questions is worth an answer */
    public LatestAnswer(Duration pause) {
        this.pause = pause;
    }

    /** Whatever is being worked out is not wanted any more. */
    public void forget() {
        question.incrementAndGet();
    }

    /**
     * Asks instead of everything asked before. Exactly one of the two is run, on the screen, unless another question is
     * asked first.
     */
    public void ask(Work<A> work, Consumer<A> show, Consumer<RuntimeException> fault) {
        long asked = question.incrementAndGet();
        UI ui = UI.getCurrentOrThrow();
        BooleanSupplier outdated = () -> asked != question.get();
        UiPush.beside("answer", () -> {
            try {
                Thread.sleep(pause);
                if (outdated.getAsBoolean()) {
                    return;
                }
                A answer = work.answer(outdated);
                tell(ui, outdated, () -> show.accept(answer));
            } catch (CancellationException | InterruptedException newer) {
                // The one who asked has asked anew.
            } catch (RuntimeException unexpected) {
                tell(ui, outdated, () -> fault.accept(unexpected));
            }
        });
    }

    private static void tell(UI ui, BooleanSupplier outdated, Runnable words) {
        UiPush.tell(ui, () -> {
            if (!outdated.getAsBoolean()) {
                words.run();
            }
        });
    }
}
