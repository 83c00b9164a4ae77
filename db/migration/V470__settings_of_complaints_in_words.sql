-- Complaints kept the power of the setting as the program writes it down for itself ('Percent[hundredths=1E+2]'). From now on it
-- stands there in words that an owner reads.
update complaint
   set setting = regexp_replace(
           setting,
           'Percent\[hundredths=[^]]*\], ([0-9]+)$',
           trim_scale(substring(setting from 'hundredths=([^]]*)\]')::numeric)::text || ' %, \1 ×')
 where setting ~ 'Percent\[hundredths=[0-9.E+-]+\], [0-9]+$';
