package puzzleworkshop.runtime;

import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What is remembered of callers from outside, by key (an address, a token): so many keys at most, the longest untouched go
 * first, so that nobody fills the memory by coming under ever new names. For one thread at a time; whoever uses it locks.
 */
public final class RecentKeys<V> extends LinkedHashMap<String, V> {

    private final int most;

    public RecentKeys(int most) {
        super(64, 0.75f, true);
        this.most = most;
    }

    @Override
    protected boolean removeEldestEntry(Map.Entry<String, V> eldest) {
        return size() > most;
    }
}
