package puzzleworkshop.access.roles;

import java.lang.reflect.Constructor;
import java.lang.reflect.Field;
import java.lang.reflect.Modifier;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.lang.reflect.WildcardType;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Currency;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import puzzleworkshop.display.Texts;
import puzzleworkshop.measure.Confidential;
import puzzleworkshop.measure.Money;
import puzzleworkshop.measure.Sentence;

/**
 * Takes money out of an answer: every amount in its records, lists and maps becomes zero, a sentence that tells an amount
 * becomes one that says it is not told, and what is {@link Confidential} says itself what is left of it.
 */
final class WithoutMoney {

    static final Sentence NOT_TOLD = Sentence.of("access.roles.not-told");

    /** Figures beside the sign of a currency, before or after it, as amounts are written anywhere. */
    private static final Pattern AMOUNT = amount();

    private static final Map<Type, Boolean> CARRYING = new ConcurrentHashMap<>();

    private WithoutMoney() {}

    /** The same answer without money; the very same object when there was none in it. */
    static Object of(Object answer) {
        return switch (answer) {
            case null -> null;
            case Money money -> Money.zero(money.currency());
            case Confidential<?> confidential -> confidential.withoutMoney();
            case Sentence sentence -> sentence.arguments().stream().anyMatch(WithoutMoney::tells) ? NOT_TOLD : sentence;
            case Optional<?> maybe -> maybe.map(WithoutMoney::of);
            case Map<?, ?> map -> ofMap(map);
            case List<?> list ->
                list.isEmpty() ? list : list.stream().map(WithoutMoney::of).toList();
            case Set<?> set -> ofSet(set);
            case Record whole -> carries(whole.getClass()) ? ofRecord(whole) : whole;
            default -> answer;
        };
    }

    private static Pattern amount() {
        String signs = Currency.getAvailableCurrencies().stream()
                .flatMap(currency -> Stream.of(currency.getCurrencyCode(), currency.getSymbol(Texts.LOCALE)))
                .distinct()
                .map(Pattern::quote)
                .collect(Collectors.joining("|"));
        String sign = "(?:\\p{Sc}|(?<![\\p{L}\\d])(?:" + signs + ")(?!\\p{L}))";
        return Pattern.compile(sign + "[\\s\u00a0\u202f−-]*\\d|\\d[\\s\u00a0\u202f]*" + sign);
    }

    private static boolean tells(Object argument) {
        return argument instanceof Money
                // lines of a history keep their amounts as they were written
                || argument instanceof String words && AMOUNT.matcher(words).find()
                || argument instanceof Sentence sentence
                        && sentence.arguments().stream().anyMatch(WithoutMoney::tells)
                || argument instanceof Collection<?> several && several.stream().anyMatch(WithoutMoney::tells);
    }

    private static Object ofMap(Map<?, ?> map) {
        Map<Object, Object> without = new LinkedHashMap<>();
        map.forEach((key, value) -> without.put(key, of(value)));
        return without;
    }

    private static Object ofSet(Set<?> set) {
        Set<Object> without = new LinkedHashSet<>();
        set.forEach(part -> without.add(of(part)));
        return without;
    }

    private static Object ofRecord(Record whole) {
        RecordComponent[] components = whole.getClass().getRecordComponents();
        Object[] parts = new Object[components.length];
        boolean same = true;
        try {
            for (int i = 0; i < parts.length; i++) {
                var accessor = components[i].getAccessor();
                accessor.setAccessible(true);
                Object before = accessor.invoke(whole);
                parts[i] = carries(components[i].getGenericType()) ? of(before) : before;
                same &= parts[i] == before;
            }
            if (same) {
                return whole;
            }
            Constructor<?> make = whole.getClass()
                    .getDeclaredConstructor(Arrays.stream(components)
                            .map(RecordComponent::getType)
                            .toArray(Class<?>[]::new));
            make.setAccessible(true);
            return make.newInstance(parts);
        } catch (ReflectiveOperationException fault) {
            throw new IllegalStateException("Money cannot be taken out of a " + whole.getClass(), fault);
        }
    }

    /** Whether there can be money in what has this type. */
    static boolean carries(Type type) {
        Boolean known = CARRYING.get(type);
        if (known == null) {
            known = carries(type, new HashSet<>());
            CARRYING.put(type, known);
        }
        return known;
    }

    private static boolean carries(Type type, Set<Type> seen) {
        if (type == Money.class || type == Sentence.class) {
            return true;
        }
        if (!seen.add(type)) {
            return false;
        }
        return switch (type) {
            case ParameterizedType of ->
                Arrays.stream(of.getActualTypeArguments()).anyMatch(part -> carries(part, seen))
                        || carries(of.getRawType(), seen);
            case WildcardType any -> Arrays.stream(any.getUpperBounds()).anyMatch(bound -> carries(bound, seen));
            case Class<?> own -> own.getName().startsWith("puzzleworkshop.") && !own.isEnum() && parts(own, seen);
            default -> false;
        };
    }

    private static boolean parts(Class<?> own, Set<Type> seen) {
        List<Type> parts = new ArrayList<>();
        if (own.isSealed()) {
            parts.addAll(List.of(own.getPermittedSubclasses()));
        }
        for (Field field : own.getDeclaredFields()) {
            if (!Modifier.isStatic(field.getModifiers())) {
                parts.add(field.getGenericType());
            }
        }
        return parts.stream().anyMatch(part -> carries(part, seen));
    }
}
