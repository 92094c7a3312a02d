package dev.reelproof.seal;

import java.util.ArrayList;
import java.util.List;

/** Checks that a tree only adds leaves to an earlier one: RFC 9162, 2.1.4.2, whose steps were read as quoted by public implementations. */
public final class ConsistencyPath {
    private ConsistencyPath() {}

    /**
     * Whether the path shows it.
     *
     * @param first how many leaves the earlier tree has; from 1
     * @param second how many the later one has
     */
    public static boolean holds(long first, Hash firstRoot, long second, Hash secondRoot, List<Hash> path) {
        if (!(first >= 1 && first <= second)) {
            return false;
        }
        if (first == second) {
            return path.isEmpty() && firstRoot.equals(secondRoot);
        }
        if (path.isEmpty()) {
            return false;
        }
        List<Hash> whole = new ArrayList<>(path);
        if (Long.bitCount(first) == 1) {
            whole.add(0, firstRoot);
        }
        long fn = first - 1;
        long sn = second - 1;
        while (fn % 2 == 1) {
            fn >>= 1;
            sn >>= 1;
        }
        Hash fr = whole.get(0);
        Hash sr = whole.get(0);
        for (Hash c : whole.subList(1, whole.size())) {
            if (sn == 0) {
                return false;
            }
            if (fn % 2 == 1 || fn == sn) {
                fr = TreeHashing.node(c, fr);
                sr = TreeHashing.node(c, sr);
                while (fn % 2 == 0 && fn != 0) {
                    fn >>= 1;
                    sn >>= 1;
                }
            } else {
                sr = TreeHashing.node(sr, c);
            }
            fn >>= 1;
            sn >>= 1;
        }
        return sn == 0 && fr.equals(firstRoot) && sr.equals(secondRoot);
    }
}
