package rainward.queue.check;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rainward.queue.problem.Job;

/** Jobs by name; of two with the same name the first counts. */
final class NamedJobs {

    private final Map<String, Job> jobs = new HashMap<>();

    NamedJobs(List<Job> all) {
        all.forEach(j -> jobs.putIfAbsent(j.name(), j));
    }

    Optional<Job> find(String field) {
        return Optional.ofNullable(jobs.get(field));
    }

    /** A job that is known to be there. */
    Job of(String field) {
        return find(field).orElseThrow();
    }
}
