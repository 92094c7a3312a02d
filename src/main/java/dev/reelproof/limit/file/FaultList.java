package dev.reelproof.limit.file;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.function.Supplier;
import java.util.function.ToIntFunction;
import org.jspecify.annotations.Nullable;

/** Gathers the faults of one file, so that its author sees them all at once. */
final class FaultList {
    private record Located(int line, String pointer, String message) {}

    private final String fileName;
    private final List<Located> faults = new ArrayList<>();
    private ToIntFunction<String> lineOf = pointer -> 1;

    FaultList(String fileName) {
        this.fileName = fileName;
    }

    /** Says how the line of a JSON pointer is found. */
    void locateBy(ToIntFunction<String> newLineOf) {
        lineOf = newLineOf;
    }

    void add(String pointer, String message) {
        addAtLine(lineOf.applyAsInt(pointer), pointer, message);
    }

    void addAtLine(int line, String pointer, String message) {
        faults.add(new Located(line, pointer, message));
    }

    boolean isEmpty() {
        return faults.isEmpty();
    }

    int size() {
        return faults.size();
    }

    /** The value, or none with its refusal noted as a fault. */
    <T> @Nullable T attempt(String pointer, Supplier<T> value) {
        try {
            return value.get();
        } catch (IllegalArgumentException e) {
            add(pointer, String.valueOf(e.getMessage()));
            return null;
        }
    }

    /** Throws the faults in the order of their lines, if there are any. */
    void throwIfAny() {
        if (!faults.isEmpty()) {
            throw new LimitSetException(faults.stream()
                    .sorted(Comparator.comparingInt(Located::line)
                            .thenComparing(Located::pointer)
                            .thenComparing(Located::message))
                    .map(fault -> new LimitSetException.Fault(
                            fileName + ":" + fault.line() + (fault.pointer().isEmpty() ? "" : " " + fault.pointer()),
                            fault.message()))
                    .toList());
        }
    }
}
