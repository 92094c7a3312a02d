package dev.reelproof.intake.result;

import dev.reelproof.intake.Faults;
import dev.reelproof.intake.IntakeException;
import dev.reelproof.limit.LimitSet;
import dev.reelproof.measurement.Origin;
import dev.reelproof.measurement.Product;
import dev.reelproof.measurement.Property;
import dev.reelproof.measurement.Reading;
import dev.reelproof.measurement.ReelResult;
import dev.reelproof.measurement.Subject;
import dev.reelproof.measurement.Sweep;
import dev.reelproof.network.CableSpan;
import dev.reelproof.network.DerivedSweeps;
import dev.reelproof.network.NetworkException;
import dev.reelproof.network.NetworkSweeps;
import dev.reelproof.network.Port;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Adds to a result what follows from its network-analyser files, by the terms of the limit set that it will be judged by.
 *
 * <p>A property is either sent or derived, not both. Files combine: each gives the sweeps of its ports. A sweep that two files
 * give is taken when both give the same values at the same frequencies; otherwise nobody could say which of them counts, and
 * the upload is refused.
 */
public final class NetworkDerivation {
    private record Key(Property property, Subject subject) {}

    private final Product product;
    private final LimitSet limitSet;
    private final ReelResult result;
    private final Faults faults = new Faults();
    private final Map<Property, Origin> sent = new LinkedHashMap<>();
    private final Map<Key, Sweep> derived = new LinkedHashMap<>();
    private final Set<String> told = new HashSet<>();
    private final List<String> warnings;
    private final List<StatedReel> reels;
    private final @Nullable String retestReason;

    private NetworkDerivation(ReadResult read, Product product, LimitSet limitSet) {
        this.product = product;
        this.limitSet = limitSet;
        this.result = read.result();
        this.warnings = new ArrayList<>(read.warnings());
        this.reels = read.reels();
        this.retestReason = read.retestReason();
    }

    /**
     * The result with what its networks give.
     *
     * @param read the result as read
     * @param product what the reel is meant to be
     * @param limitSet what it will be judged by
     * @throws IntakeException CONTENT when a network cannot be one of the product's, or what it gives clashes with what was
     *     sent
     */
    public static ReadResult derive(ReadResult read, Product product, LimitSet limitSet) {
        return read.networks().isEmpty()
                ? read
                : new NetworkDerivation(read, product, limitSet).derive(read.networks());
    }

    private ReadResult derive(List<SentNetwork> networks) {
        for (Reading reading : result.readings()) {
            sent.putIfAbsent(reading.property(), reading.origin());
        }
        for (Sweep sweep : result.sweeps()) {
            sent.putIfAbsent(sweep.property(), sweep.origin());
        }
        for (SentNetwork network : networks) {
            if (fitsProduct(network)) {
                derive(network);
            }
        }
        faults.refuseIfAny();
        List<Sweep> sweeps = new ArrayList<>(result.sweeps());
        sweeps.addAll(derived.values());
        return new ReadResult(
                new ReelResult(
                        result.product(),
                        result.length(),
                        result.temperature(),
                        result.station(),
                        result.technician(),
                        result.started(),
                        result.finished(),
                        result.equipment(),
                        result.readings(),
                        sweeps),
                List.of(),
                warnings,
                reels,
                retestReason);
    }

    private boolean fitsProduct(SentNetwork network) {
        List<Port> ports = network.ports();
        for (int i = 0; i < ports.size(); i++) {
            if (ports.get(i).pair() > product.pairs()) {
                faults.add(
                        network.pointer() + "/ports/" + i + "/pair",
                        "port " + ports.get(i).number() + " is connected to pair "
                                + ports.get(i).pair() + ", which is beyond the " + product.pairs()
                                + " pairs of product " + product.id());
                return false;
            }
        }
        return true;
    }

    private void derive(SentNetwork network) {
        boolean all = network.derive().isEmpty();
        DerivedSweeps found;
        try {
            found = NetworkSweeps.derive(
                    network.data(),
                    network.map(),
                    limitSet.networkTerms(),
                    new CableSpan(result.length().metres(), product.nominalVelocity()),
                    all ? NetworkSweeps.DERIVABLE : network.derive());
        } catch (NetworkException e) {
            faults.add(e.where(), String.valueOf(e.getMessage()));
            return;
        }
        warnings.addAll(found.warnings());
        found.sweeps().forEach(sweep -> take(network, sweep));
        for (Property property : network.derive()) {
            if (!found.reachable().contains(property)) {
                faults.add(
                        network.pointer() + "/derive",
                        property + " cannot be derived from " + network.data().file() + ": "
                                + NetworkSweeps.needs(property));
            }
        }
    }

    private void take(SentNetwork network, Sweep sweep) {
        Property property = sweep.property();
        if (sent.containsKey(property)) {
            once(
                    "sent " + property,
                    sent.get(property).of(0),
                    property + " is given here and derived from "
                            + network.data().file()
                            + " too; leave it out here, or name in " + network.pointer()
                            + "/derive what is to be derived, without it");
            return;
        }
        for (int i = 0; i < sweep.size(); i++) {
            try {
                ValueRules.requireValue(property, sweep.sent(i), sweep.unit());
            } catch (IllegalArgumentException e) {
                once("value " + property + network.pointer(), sweep.origin().of(i), String.valueOf(e.getMessage()));
                return;
            }
        }
        Sweep before = derived.putIfAbsent(new Key(property, sweep.subject()), sweep);
        if (before != null && !same(before, sweep)) {
            once(
                    "twice " + property + network.pointer(),
                    sweep.origin().of(0),
                    property + " of " + sweep.subject().words() + " is derived from this file and from "
                            + before.origin().of(0) + " too, and the two differ; name in " + network.pointer()
                            + "/derive, or in the other's, what each is to give");
        }
    }

    private static boolean same(Sweep one, Sweep other) {
        return one.grid().equals(other.grid()) && Arrays.equals(one.sent(), other.sent());
    }

    /** Notes a fault of one kind once: a file gives many sweeps, and one sentence is enough. */
    private void once(String kind, String where, String message) {
        if (told.add(kind)) {
            faults.add(where, message);
        }
    }
}
