package puzzleworkshop.bookings;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DisplayNameGeneration;
import org.junit.jupiter.api.DisplayNameGenerator.ReplaceUnderscores;
import org.junit.jupiter.api.Test;
import org.springframework.asm.AnnotationVisitor;
import org.springframework.asm.ClassReader;
import org.springframework.asm.ClassVisitor;
import org.springframework.asm.Handle;
import org.springframework.asm.MethodVisitor;
import org.springframework.asm.Opcodes;
import puzzleworkshop.PuzzleWorkshop;

/**
 * Whoever can write to a ledger does so under a booking key: read from the program's own bytecode, every public command of
 * a service from which a statement that adds to a ledger can be reached is annotated {@link Books}, or stands here with
 * what keeps it from happening twice.
 */
@DisplayNameGeneration(ReplaceUnderscores.class)
class BookingRuleTest {

    private static final Pattern LEDGER =
            Pattern.compile("insert\\s+into\\s+(order_payment|invoice|invoice_line|kept_paper|"
                    + "stage_done|stage_undone|went_wrong|supply_movement|sheet_cut|cutting_trial)\\b");

    /** Commands that write to a ledger without a key of their own, and why they cannot happen twice. */
    private static final Map<String, String> GUARDED = new TreeMap<>(Map.ofEntries(
            Map.entry("Supplies.use", "within the booking of a tick or a print run"),
            Map.entry("Supplies.useKnowingly", "within the booking of a tick or a print run"),
            Map.entry("Supplies.putBack", "within the booking of a tick taken back"),
            Map.entry("SheetHolds.cut", "a held sheet is cut once"),
            Map.entry("SheetHolds.spoil", "a held sheet is cut once"),
            Map.entry("BoardCuts.cut", "a held sheet is cut once"),
            Map.entry("BoardCuts.spoilBlanks", "a held sheet is cut once"),
            Map.entry("MoneyPapers.quote", "one paper for each version of an offer, by a unique index"),
            Map.entry("Letters.draft", "takes the paper of the offer, one for each version, by a unique index"),
            Map.entry("MoneyPapers.issued", "one paper for each invoice, by a unique constraint"),
            Map.entry("Demo.*", "makes a workshop up, once, before anybody works in it")));

    private record Method(String owner, String name, String descriptor) {

        String said() {
            return owner.replaceAll(".*/", "").replaceAll("\\$.*", "") + "." + name;
        }
    }

    private final Map<Method, Set<Method>> callers = new HashMap<>();
    private final Set<Method> writers = new HashSet<>();
    private final Map<Method, Integer> access = new HashMap<>();
    private final Map<Method, Set<String>> annotations = new HashMap<>();
    private final Map<String, Set<String>> classAnnotations = new HashMap<>();
    private final Set<String> publicClasses = new HashSet<>();

    @Test
    void every_command_that_can_write_to_a_ledger_carries_a_key_or_says_what_guards_it() {
        readTheProgram();
        assertThat(writers).as("statements that add to ledgers").hasSizeGreaterThan(8);
        Set<String> unguarded = new TreeSet<>();
        Set<String> used = new TreeSet<>();
        for (Method method : reaching(writers)) {
            boolean command = (access.getOrDefault(method, 0) & Opcodes.ACC_PUBLIC) != 0
                    && publicClasses.contains(method.owner())
                    && classAnnotations.getOrDefault(method.owner(), Set.of()).stream()
                            .anyMatch(name -> name.endsWith("/Service;") || name.endsWith("/Component;"))
                    && !method.owner().contains("/ui/");
            Set<String> own = annotations.getOrDefault(method, Set.of());
            boolean event = own.stream().anyMatch(name -> name.endsWith("EventListener;"));
            if (!command || event) {
                continue;
            }
            boolean keyed = own.contains("Lpuzzleworkshop/bookings/Books;");
            if (keyed) {
                assertThat(method.descriptor()).as(method.said()).startsWith("(Lpuzzleworkshop/measure/BookingKey;");
            } else if (GUARDED.containsKey(method.said())) {
                used.add(method.said());
            } else if (!method.owner().startsWith("puzzleworkshop/demo/")) {
                unguarded.add(method.said());
            }
        }
        assertThat(unguarded).as("commands that may book twice").isEmpty();
        used.add("Demo.*");
        assertThat(new TreeSet<>(GUARDED.keySet()))
                .as("no guard is named for what is gone")
                .isEqualTo(used);
    }

    private Set<Method> reaching(Set<Method> from) {
        Set<Method> reached = new HashSet<>(from);
        Deque<Method> open = new ArrayDeque<>(from);
        while (!open.isEmpty()) {
            for (Method caller : callers.getOrDefault(open.pop(), Set.of())) {
                if (reached.add(caller)) {
                    open.push(caller);
                }
            }
        }
        return reached;
    }

    private void readTheProgram() {
        try (Stream<Path> files = Files.walk(Path.of(PuzzleWorkshop.class
                .getProtectionDomain()
                .getCodeSource()
                .getLocation()
                .toURI()))) {
            files.filter(file -> file.toString().endsWith(".class")
                            && file.toString().contains("puzzleworkshop"))
                    .forEach(this::read);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        } catch (URISyntaxException impossible) {
            throw new IllegalStateException(impossible);
        }
    }

    private void read(Path file) {
        try {
            new ClassReader(Files.readAllBytes(file)).accept(new Reading(), ClassReader.SKIP_FRAMES);
        } catch (IOException unreadable) {
            throw new UncheckedIOException(unreadable);
        }
    }

    private final class Reading extends ClassVisitor {

        private String owner;

        Reading() {
            super(Opcodes.ASM9);
        }

        @Override
        public void visit(int version, int flags, String name, String signature, String parent, String[] interfaces) {
            owner = name;
            if ((flags & Opcodes.ACC_PUBLIC) != 0) {
                publicClasses.add(name);
            }
        }

        @Override
        public AnnotationVisitor visitAnnotation(String descriptor, boolean visible) {
            classAnnotations.computeIfAbsent(owner, o -> new HashSet<>()).add(descriptor);
            return null;
        }

        @Override
        public MethodVisitor visitMethod(int flags, String name, String descriptor, String signature, String[] thrown) {
            Method method = new Method(owner, name, descriptor);
            access.put(method, flags);
            return new MethodVisitor(Opcodes.ASM9) {

                @Override
                public AnnotationVisitor visitAnnotation(String annotation, boolean visible) {
                    annotations.computeIfAbsent(method, m -> new HashSet<>()).add(annotation);
                    return null;
                }

                @Override
                public void visitLdcInsn(Object value) {
                    if (value instanceof String text) {
                        Matcher ledger = LEDGER.matcher(text);
                        if (ledger.find()) {
                            writers.add(method);
                        }
                    }
                }

                @Override
                public void visitMethodInsn(int opcode, String to, String called, String type, boolean ofInterface) {
                    called(to, called, type);
                }

                @Override
                public void visitInvokeDynamicInsn(String called, String type, Handle bootstrap, Object... arguments) {
                    for (Object argument : arguments) {
                        if (argument instanceof Handle handle) {
                            called(handle.getOwner(), handle.getName(), handle.getDesc());
                        }
                    }
                }

                private void called(String to, String called, String type) {
                    if (to.startsWith("puzzleworkshop/")) {
                        callers.computeIfAbsent(new Method(to, called, type), m -> new HashSet<>())
                                .add(method);
                    }
                }
            };
        }
    }
}
