package rainward.feed.terms;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import rainward.weather.source.LastGoodCopies;

/** Copies that last as long as the process. */
public final class MemoryCopies implements LastGoodCopies {

    private final Map<String, Copy> copies = new ConcurrentHashMap<>();

    @Override
    public Optional<Copy> find(String address) {
        return Optional.ofNullable(copies.get(address));
    }

    @Override
    public void keep(Copy copy) {
        copies.put(copy.address(), copy);
    }

    /** Forgets them all. */
    public void clear() {
        copies.clear();
    }
}
