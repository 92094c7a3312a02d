package dev.reelproof.certificate;

import java.util.List;

/**
 * The plant that tests and certifies, as its configuration gives it.
 *
 * @param name its name
 * @param address the lines of its address
 */
public record Plant(String name, List<String> address) {

    public Plant {
        if (name == null || name.isBlank()) {
            throw new IllegalArgumentException("a certificate needs the plant's name");
        }
        address = List.copyOf(address);
    }
}
