/** Pictures from telephones: checked before they are decoded, turned upright, scaled, and written anew, so that nothing but pixels is kept. */
package org.seamledger.photo;
