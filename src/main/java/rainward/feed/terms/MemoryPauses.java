package rainward.feed.terms;

import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import rainward.weather.source.HostPauses;

/** Pauses that last as long as the process. */
public final class MemoryPauses implements HostPauses {

    private final Map<String, Trouble> troubles = new ConcurrentHashMap<>();

    @Override
    public Optional<Trouble> find(String host) {
        return Optional.ofNullable(troubles.get(host));
    }

    @Override
    public void keep(Trouble trouble) {
        troubles.put(trouble.host(), trouble);
    }

    @Override
    public void clear(String host) {
        troubles.remove(host);
    }
}
