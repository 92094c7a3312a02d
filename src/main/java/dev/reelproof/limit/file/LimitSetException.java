package dev.reelproof.limit.file;

import java.util.List;
import java.util.stream.Collectors;

/** One or more limit set files were refused; every fault found is listed, in the order of the files and of their lines. */
public class LimitSetException extends RuntimeException {
    private final transient List<Fault> faults;

    /**
     * A fault of a file.
     *
     * @param where file, line and path, such as {@code limits/category-6-cable.yaml:31 /requirements/4/unit}
     * @param message what is wrong there and what would be right
     */
    public record Fault(String where, String message) {
        @Override
        public String toString() {
            return where + ": " + message;
        }
    }

    public LimitSetException(List<Fault> faults) {
        super(faults.stream().map(Fault::toString).collect(Collectors.joining(System.lineSeparator())));
        this.faults = List.copyOf(faults);
    }

    public List<Fault> faults() {
        return faults;
    }
}
