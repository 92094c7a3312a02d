package dev.reelproof.genealogy;

import java.util.List;
import java.util.stream.Collectors;

/** A lot's report cannot be taken as it stands. */
public class LotFaultsException extends RuntimeException {
    private final List<LotFault> faults;

    /**
     * A refusal.
     *
     * @param faults what is wrong; at least one
     */
    public LotFaultsException(List<LotFault> faults) {
        super(faults.stream()
                .map(fault -> fault.where() + ": " + fault.message())
                .collect(Collectors.joining("; ")));
        this.faults = List.copyOf(faults);
    }

    public List<LotFault> faults() {
        return faults;
    }
}
