package dev.reelproof.seal;

import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;

/** A tree in memory, and the eight entries of the published vectors. */
final class PublishedTree {

    /**
     * The eight inputs that the reference implementation of Certificate Transparency tests with (MerkleTreeTest), as repeated by its
     * successors; read in public copies of them.
     */
    static final List<byte[]> ENTRIES = Stream.of(
                    "", "00", "10", "2021", "3031", "40414243", "5051525354555657", "606162636465666768696a6b6c6d6e6f")
            .map(hex -> HexFormat.of().parseHex(hex))
            .toList();

    private PublishedTree() {}

    /** A tree over leaves with these hashes. */
    static MerkleTree of(List<Hash> leaves) {
        List<List<Hash>> levels = new ArrayList<>();
        levels.add(leaves);
        while (levels.get(levels.size() - 1).size() > 1) {
            List<Hash> below = levels.get(levels.size() - 1);
            List<Hash> level = new ArrayList<>();
            for (int i = 0; i + 1 < below.size(); i += 2) {
                level.add(TreeHashing.node(below.get(i), below.get(i + 1)));
            }
            levels.add(level);
        }
        return new MerkleTree(leaves.size(), (level, index) -> levels.get(level).get((int) index));
    }

    /** The published tree of so many leaves. */
    static MerkleTree published(int size) {
        return of(ENTRIES.subList(0, size).stream().map(TreeHashing::leaf).toList());
    }

    static List<Hash> hashes(String... hex) {
        return Stream.of(hex).map(Hash::ofHex).toList();
    }
}
