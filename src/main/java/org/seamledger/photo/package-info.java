/** Pictures from telephones: checked before they are decoded, turned upright, scaled, written anew: nothing but pixels is kept. */
package org.seamledger.photo;
